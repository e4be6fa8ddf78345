import type { Belief, Bench } from './bench.ts';
import { RatioChooser } from './ratio.ts';
import { Sight } from './sight.ts';

/** What is left below this share of the belief is charged as handed over instead of being followed further. */
const LEFT_OVER = 1e-7;
/** The same on a live bench, where an answer has to come at once: a tenth of a percent of what handing over costs. */
export const LIVE_LEFT_OVER = 1e-3;

/**
 * The minutes of going on by p/c without looking at which outcome a step had unless it cures: one line of steps,
 * stopped where handing over is cheaper. It is a policy like any other and its value is exact, at the price of one
 * pass: chances and harms are kept up to date by taking away what each step cures.
 */
export class RatioLine {
  readonly #bench: Bench;
  readonly #chooser: RatioChooser;
  readonly #sight: Sight;
  readonly #belief: Float64Array;
  readonly #done: Uint8Array;
  /** Minutes × mass of each step of the line, and the mass before it. */
  readonly #charges: Float64Array;
  readonly #masses: Float64Array;

  readonly #leftOver: number;

  constructor(bench: Bench, leftOver = LEFT_OVER) {
    this.#bench = bench;
    this.#leftOver = leftOver;
    this.#chooser = new RatioChooser(bench);
    this.#sight = new Sight(bench);
    this.#belief = new Float64Array(bench.faultCount);
    this.#done = new Uint8Array(bench.stepCount);
    this.#charges = new Float64Array(bench.stepCount + 1);
    this.#masses = new Float64Array(bench.stepCount + 1);
  }

  /** Steps in the last line: a measure of work done. */
  length = 0;

  /**
   * Expected minutes × mass from here on, in the amortised count of `Move.price`: closing what is open already is not
   * in it. `mass` is the total of `belief`; neither `belief` nor `done` is changed.
   */
  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    if (mass <= 0) return 0;
    const { arrangements, problem, minutes, stepCount } = this.#bench;
    this.#belief.set(belief);
    this.#done.set(done);
    this.#sight.of(this.#bench, belief);
    let left = mass;
    let at = arrangement;
    let length = 0;
    while (left > mass * this.#leftOver && length < stepCount) {
      const step = this.#chooser.first(at, this.#sight, left, this.#done);
      if (step < 0) break;
      const move = arrangements.move(at, step);
      const charge = left * (move.price + (minutes[step] as number)) + (this.#sight.harm[step] as number);
      this.#charges[length] = charge + this.#endingOf(step);
      this.#masses[length] = left;
      length++;
      at = move.to;
      left -= this.#takeAway(step);
    }
    this.length = length;
    let value = Math.max(0, left) * problem.handOver;
    for (let i = length - 1; i >= 0; i--) {
      const goingOn = (this.#charges[i] as number) + value;
      value = Math.min((this.#masses[i] as number) * problem.handOver, goingOn);
    }
    return value;
  }

  /** The first step of the line, or -1 when no step left can cure. */
  first(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    return this.#chooser.first(arrangement, this.#sight.of(this.#bench, belief), mass, done);
  }

  #endingOf(step: number): number {
    const ending = this.#bench.problem.steps[step]?.ending;
    if (!ending) return 0;
    const curable = this.#bench.cures[step] as Int32Array;
    let sum = 0;
    for (let i = 0; i < curable.length; i++) {
      const f = curable[i] as number;
      sum += (this.#belief[f] as number) * (ending[f] as number);
    }
    return sum;
  }

  /** Takes what the step cures out of belief, chances and harms; returns the mass that is gone. */
  #takeAway(step: number): number {
    const curable = this.#bench.cures[step] as Int32Array;
    const chance = this.#bench.cureChance[step] as Float64Array;
    let gone = 0;
    for (let i = 0; i < curable.length; i++) {
      const f = curable[i] as number;
      const cured = (this.#belief[f] as number) * (chance[i] as number);
      if (cured === 0) continue;
      gone += cured;
      this.#belief[f] = (this.#belief[f] as number) - cured;
      this.#sight.add(this.#bench, f, -cured);
    }
    this.#done[step] = 1;
    return gone;
  }
}
