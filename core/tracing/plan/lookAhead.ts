import type { Base } from './base.ts';
import { afterOutcome, type Belief, type Bench, chargeOf } from './bench.ts';
import { clearlyLess, TIE } from './problem.ts';
import { Sight } from './sight.ts';
import type { Stand } from './stand.ts';
import { keyOf, type StateSpace, StateValues } from './stateSpace.ts';

/** So many steps are looked into at each level, the ones with the best one-step value. */
export const MOST_CANDIDATES = 16;

export type LookAheadOptions = {
  /** 1: the step, then p/c. 2: the step, then the best step by one-step value, then p/c. */
  readonly depth: 1 | 2;
  /** Numbers states so that one-step values are remembered; left out where states are too many. */
  readonly space?: StateSpace | undefined;
  /**
   * Looks into so many steps at the second level, left out: into all. Half of them are the best by one-step value at
   * the first level, half the best by p/c once the outcome is known; the base's own step is always among the answers.
   */
  readonly shortlist?: number | undefined;
};

/**
 * Improves a base policy by looking one or two steps ahead (rollout: Bertsekas & Tsitsiklis 1996, section 6.1; the
 * improved policy is never worse than its base when the base is evaluated exactly and its own step stays among the
 * candidates, which the one-step value ensures).
 */
export class LookAhead {
  readonly #bench: Bench;
  readonly #base: Base;
  readonly #options: LookAheadOptions;
  readonly #first: Float64Array;
  readonly #second: Float64Array;
  readonly #done: Uint8Array;
  readonly #known: StateValues | undefined;
  /** Steps in the order of their one-step value at the first level. */
  #order: readonly number[];
  readonly #short: Int32Array;
  readonly #sight: Sight;
  /** Minutes × mass of doing each step next, by the depth asked for; NaN for steps done or pruned. */
  readonly values: Float64Array;
  /** The same by one step of look-ahead. */
  readonly oneStep: Float64Array;

  constructor(bench: Bench, base: Base, options: LookAheadOptions) {
    this.#bench = bench;
    this.#base = base;
    this.#options = options;
    this.#first = new Float64Array(bench.faultCount);
    this.#second = new Float64Array(bench.faultCount);
    this.#done = new Uint8Array(bench.stepCount);
    this.#known = options.space && options.depth === 2 ? new StateValues(options.space.most) : undefined;
    this.#order = Array.from({ length: bench.stepCount }, (_, s) => s);
    this.#short = Int32Array.from(this.#order);
    this.#sight = new Sight(bench);
    this.values = new Float64Array(bench.stepCount);
    this.oneStep = new Float64Array(bench.stepCount);
  }

  get depth(): 1 | 2 {
    return this.#options.depth;
  }

  /** The step to do next, or -1 when handing over is cheaper; fills `values` and `oneStep`. */
  choose(stand: Stand): number {
    const { stepCount } = this.#bench;
    this.#done.set(stand.done);
    for (let s = 0; s < stepCount; s++) {
      this.oneStep[s] =
        stand.done[s] === 1 ? Number.NaN : this.#oneStep(stand.belief, stand.mass, stand.arrangement, stand.key, s);
    }
    this.values.set(this.oneStep);
    if (this.#options.depth === 2) {
      const candidates = this.#candidates();
      for (let s = 0; s < stepCount; s++) {
        this.values[s] = candidates.has(s) ? this.#twoSteps(stand, s) : Number.NaN;
      }
    }
    let best = -1;
    for (let s = 0; s < stepCount; s++) {
      const value = this.values[s] as number;
      if (!Number.isNaN(value) && (best < 0 || clearlyLess(value, this.values[best] as number))) best = s;
    }
    const stopping = stand.mass * this.#bench.problem.handOver;
    return best >= 0 && clearlyLess(stopping, this.values[best] as number) ? -1 : best;
  }

  /** Minutes × mass of doing a step next and going on by the base; some figure above `enough` when it is above that. */
  oneStepOf({ belief, mass, done, arrangement, key }: Stand, step: number, enough: number): number {
    this.#done.set(done);
    return this.#oneStep(belief, mass, arrangement, key, step, enough);
  }

  /** Minutes × mass after one outcome of a step, by the look-ahead that is left after it. */
  valueAfter(stand: Stand, step: number, outcome: number): number {
    const mass = afterOutcome(this.#bench, stand.belief, step, outcome, this.#first);
    if (mass <= 0 || this.#bench.problem.steps[step]?.cures[outcome]) return 0;
    this.#done.set(stand.done);
    this.#done[step] = 1;
    const { to } = this.#bench.arrangements.move(stand.arrangement, step);
    const key = this.#keyAfter(stand.key, step, (this.#bench.goingOn[step] ?? []).indexOf(outcome));
    return this.#options.depth === 2
      ? this.#bestOneStep(this.#first, mass, to, key)
      : this.#base.value(this.#first, mass, this.#done, to, key);
  }

  #candidates(): ReadonlySet<number> {
    const left = [...this.oneStep.keys()].filter((s) => !Number.isNaN(this.oneStep[s] as number));
    left.sort((a, b) => (this.oneStep[a] as number) - (this.oneStep[b] as number) || a - b);
    this.#order = left;
    return new Set(left.slice(0, MOST_CANDIDATES));
  }

  /** Puts the steps for the second level into #short; returns how many. */
  #shorten(belief: Belief, mass: number, arrangement: number): number {
    const { shortlist } = this.#options;
    const { stepCount, arrangements } = this.#bench;
    const short = this.#short;
    if (!shortlist || this.#order.length <= shortlist) {
      this.#order.forEach((s, i) => {
        short[i] = s;
      });
      return this.#order.length;
    }
    let count = 0;
    for (let i = 0; count < shortlist / 2 && i < this.#order.length; i++) {
      if (this.#done[this.#order[i] as number] === 0) short[count++] = this.#order[i] as number;
    }
    const { cure, harm } = this.#sight.of(this.#bench, belief);
    for (let i = 0; i < count; i++) cure[short[i] as number] = 0;
    while (count < shortlist) {
      let best = -1;
      let ratio = 0;
      for (let s = 0; s < stepCount; s++) {
        const chance = cure[s] as number;
        if (chance <= 0 || this.#done[s] === 1) continue;
        const minutes = (this.#bench.minutes[s] as number) + arrangements.move(arrangement, s).price;
        const own = chance / (mass * minutes + (harm[s] as number));
        if (own <= ratio) continue;
        best = s;
        ratio = own;
      }
      if (best < 0) break;
      cure[best] = 0;
      short[count++] = best;
    }
    return count;
  }

  #keyAfter(key: number, step: number, digit: number): number {
    const stride = this.#options.space?.strides[step] ?? 0;
    return key + stride * (digit + 1);
  }

  #twoSteps(stand: Stand, step: number): number {
    const { arrangements, goingOn } = this.#bench;
    const move = arrangements.move(stand.arrangement, step);
    let value = chargeOf(this.#bench, stand.belief, stand.mass, step) + stand.mass * move.price;
    this.#done[step] = 1;
    const outcomes = goingOn[step] ?? [];
    for (let i = 0; i < outcomes.length; i++) {
      const left = afterOutcome(this.#bench, stand.belief, step, outcomes[i] as number, this.#first);
      if (left > 0) value += this.#bestOneStep(this.#first, left, move.to, this.#keyAfter(stand.key, step, i));
    }
    this.#done[step] = 0;
    return value;
  }

  /** Handing over, going on by the base, or one step and then the base: whichever is cheapest. */
  #bestOneStep(belief: Belief, mass: number, arrangement: number, key: number): number {
    const space = this.#options.space;
    const state = space ? keyOf(space, key, arrangement) : 0;
    const known = this.#known?.get(state) ?? Number.NaN;
    if (!Number.isNaN(known)) return known;
    let best = this.#base.value(belief, mass, this.#done, arrangement, key);
    const count = this.#shorten(belief, mass, arrangement);
    for (let i = 0; i < count; i++) {
      const s = this.#short[i] as number;
      if (this.#done[s] === 0) best = Math.min(best, this.#oneStep(belief, mass, arrangement, key, s, best));
    }
    this.#known?.set(state, best);
    return best;
  }

  /** One step, then the base. Given up (a figure above `enough`) as soon as it cannot be better than `enough`. */
  #oneStep(belief: Belief, mass: number, arrangement: number, key: number, step: number, enough = Infinity): number {
    const { arrangements, goingOn } = this.#bench;
    const move = arrangements.move(arrangement, step);
    let value = chargeOf(this.#bench, belief, mass, step) + mass * move.price;
    const outcomes = goingOn[step] as readonly number[];
    this.#done[step] = 1;
    for (let i = 0; i < outcomes.length && value <= enough * (1 + TIE); i++) {
      const left = afterOutcome(this.#bench, belief, step, outcomes[i] as number, this.#second);
      if (left > 0) value += this.#base.value(this.#second, left, this.#done, move.to, this.#keyAfter(key, step, i));
    }
    this.#done[step] = 0;
    return value;
  }
}
