import { at, nth } from '../../../figures/rows.ts';
import { addRow, type CompiledProblem } from '../problem/compiledProblem.ts';
import type { Effort } from '../problem/effort.ts';
import type { PlanState } from '../states/planState.ts';
import { RatioChooser } from './ratio.ts';
import { RatioSums } from './ratioSums.ts';

/** What is left below this share of the belief is charged as handed over instead of being followed further. */
const LEFT_OVER = 1e-7;
/** The same on a live bench, where an answer has to come at once: a tenth of a percent of what handing over costs. */
export const LIVE_LEFT_OVER = 1e-3;

/** A fault with less belief than this share of what may be left over is not followed along the line. */
const NEGLIGIBLE = 0.01;

/** One line of steps. `order` is written anew by the next line: whoever keeps it takes a copy. */
export type Line = {
  /** Expected minutes × mass from here on: what is open already is not charged for closing (see `Move.price`). */
  readonly minutes: number;
  /** The steps in their order, and how many of them are done before handing over is cheaper. */
  readonly order: Int32Array;
  readonly kept: number;
};

type Laid = { readonly length: number; readonly left: number };

/** What taking one step leaves: how many faults are followed still, what it cost by fault (minutes × mass), the mass it cured. */
type Taken = { readonly following: number; readonly costs: number; readonly gone: number };

const NOTHING: Line = { minutes: 0, order: new Int32Array(), kept: 0 };

/**
 * The minutes of going on by p/c without looking at which outcome a step had unless it cures: one line of steps,
 * stopped where handing over is cheaper. It is a policy like any other and its value is exact, at the price of one
 * pass: chances and harms are kept up to date by taking away what each step cures.
 */
export class RatioLine {
  readonly #compiled: CompiledProblem;
  readonly #effort: Effort;
  readonly #chooser: RatioChooser;
  readonly #sums: RatioSums;
  /** The faults that are still followed, and the belief in each of them. */
  readonly #followed: Int32Array;
  readonly #belief: Float64Array;
  readonly #done: Uint8Array;
  /** Minutes × mass of each step of the line, and the mass before it. */
  readonly #charges: Float64Array;
  readonly #masses: Float64Array;
  readonly #order: Int32Array;
  readonly #leftOver: number;

  constructor(compiled: CompiledProblem, effort: Effort, leftOver = LEFT_OVER) {
    this.#compiled = compiled;
    this.#effort = effort;
    this.#leftOver = leftOver;
    this.#chooser = new RatioChooser(compiled, compiled.aims, 1 / compiled.problem.handOver);
    this.#sums = new RatioSums(compiled, compiled.aimedBy);
    this.#followed = new Int32Array(compiled.faultCount);
    this.#belief = new Float64Array(compiled.faultCount);
    this.#done = new Uint8Array(compiled.stepCount);
    this.#order = new Int32Array(compiled.stepCount);
    this.#charges = new Float64Array(compiled.stepCount + 1);
    this.#masses = new Float64Array(compiled.stepCount + 1);
  }

  /** Follows the line from a state, which stays as it is. */
  follow(state: PlanState): Line {
    const { faultCount, stepCount } = this.#compiled;
    const laid = state.mass > 0 ? this.#lay(state) : null;
    this.#effort.spend(4 * faultCount + (laid?.length ?? 0) * stepCount);
    return laid ? this.#valued(laid) : NOTHING;
  }

  /** Lays the line: its steps, charges and masses; answers how many steps it has, and the mass left at its end. */
  #lay({ belief, mass, done, arrangement: start }: PlanState): Laid {
    const { arrangements, minutes, stepCount } = this.#compiled;
    this.#done.set(done);
    let following = this.#look(belief, mass * this.#leftOver * NEGLIGIBLE);
    let left = mass;
    let arrangement = start;
    let length = 0;
    while (left > mass * this.#leftOver && length < stepCount) {
      const step = this.#chooser.first({ arrangement, mass: left, done: this.#done }, this.#sums);
      if (step < 0) break;
      const move = arrangements.move(arrangement, step);
      const taken = this.#take(step, following, mass * this.#leftOver * NEGLIGIBLE);
      this.#masses[length] = left;
      this.#order[length] = step;
      this.#charges[length] = left * (move.price + at(minutes, step)) + taken.costs;
      following = taken.following;
      arrangement = move.to;
      left -= taken.gone;
      length++;
    }
    return { length, left };
  }

  /** The line laid last from its end: handing over wherever that is cheaper than going on. */
  #valued({ length, left }: Laid): Line {
    const { handOver } = this.#compiled.problem;
    let kept = length;
    let minutes = Math.max(0, left) * handOver;
    for (let i = length - 1; i >= 0; i--) {
      const goingOn = at(this.#charges, i) + minutes;
      const stopping = at(this.#masses, i) * handOver;
      if (stopping <= goingOn) kept = i;
      minutes = Math.min(stopping, goingOn);
    }
    return { minutes, order: this.#order, kept };
  }

  /** Looks at a belief; what has no more than `least` is not followed and ends as handed over. Answers how many are. */
  #look(belief: Float64Array, least: number): number {
    this.#sums.clear();
    let following = 0;
    for (let f = 0; f < belief.length; f++) {
      const share = at(belief, f);
      if (share <= least) continue;
      this.#followed[following] = f;
      this.#belief[following++] = share;
      this.#sums.add(f, share);
    }
    return following;
  }

  /** Takes what a step cures out of belief, chances and harms. */
  #take(step: number, following: number, least: number): Taken {
    const { cureRow, costRow, aimedBy, harmedBy } = this.#compiled;
    const { cure, harm } = this.#sums;
    const chance = nth(cureRow, step);
    const cost = costRow[step];
    const followed = this.#followed;
    const belief = this.#belief;
    let costs = 0;
    let gone = 0;
    let kept = 0;
    for (let i = 0; i < following; i++) {
      const f = followed[i] ?? NaN;
      const share = belief[i] ?? NaN;
      const cured = share * (chance[f] ?? NaN);
      const left = share - cured;
      if (cost) costs += share * (cost[f] ?? NaN);
      gone += cured;
      followed[kept] = f;
      belief[kept] = left;
      const lost = left > least ? cured : share;
      if (left > least) kept++;
      if (lost === 0) continue;
      addRow(cure, aimedBy, f, -lost);
      addRow(harm, harmedBy, f, -lost);
    }
    this.#done[step] = 1;
    return { following: kept, costs, gone };
  }
}
