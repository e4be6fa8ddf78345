import type { Belief, Bench } from './bench.ts';
import { RatioChooser } from './ratio.ts';

/** What is left below this share of the belief is charged as handed over instead of being followed further. */
const LEFT_OVER = 1e-7;

/**
 * The minutes of going on by p/c without looking at which outcome a step had unless it cures: one line of steps,
 * stopped where handing over is cheaper. It is a policy like any other and its value is exact, at the price of one
 * pass: chances and harms are kept up to date by taking away what each step cures.
 */
export class RatioLine {
  readonly #bench: Bench;
  readonly #chooser: RatioChooser;
  readonly #belief: Float64Array;
  readonly #cure: Float64Array;
  readonly #cost: Float64Array;
  readonly #done: Uint8Array;
  /** Minutes × mass of each step of the line, and the mass before it. */
  readonly #charges: Float64Array;
  readonly #masses: Float64Array;

  constructor(bench: Bench, chooser = new RatioChooser(bench)) {
    this.#bench = bench;
    this.#chooser = chooser;
    this.#belief = new Float64Array(bench.faultCount);
    this.#cure = new Float64Array(bench.stepCount);
    this.#cost = new Float64Array(bench.stepCount);
    this.#done = new Uint8Array(bench.stepCount);
    this.#charges = new Float64Array(bench.stepCount + 1);
    this.#masses = new Float64Array(bench.stepCount + 1);
  }

  /** Steps started by the last call to `value` or `first`: a measure of work done. */
  work = 0;

  /**
   * Expected minutes × mass from here on, in the amortised count of `Move.price`: closing what is open already is not
   * in it. `mass` is the total of `belief`; neither `belief` nor `done` is changed.
   */
  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    if (mass <= 0) return 0;
    this.#begin(belief, mass, done);
    const { arrangements, problem } = this.#bench;
    let left = mass;
    let at = arrangement;
    let length = 0;
    while (left > mass * LEFT_OVER && length < this.#bench.stepCount) {
      const step = this.#chooser.first(at, { cure: this.#cure, cost: this.#cost, done: this.#done }, left);
      if (step < 0) break;
      const move = arrangements.move(at, step);
      this.#charges[length] = left * move.price + (this.#cost[step] as number) + this.#endingOf(step);
      this.#masses[length] = left;
      length++;
      at = move.to;
      left = this.#takeAway(step, left);
    }
    this.work = length + 1;
    let value = Math.max(0, left) * problem.handOver;
    for (let i = length - 1; i >= 0; i--) {
      const goingOn = (this.#charges[i] as number) + value;
      const stopping = (this.#masses[i] as number) * problem.handOver;
      value = Math.min(stopping, goingOn);
    }
    return value;
  }

  /** The first step of the line, or -1 when no step left can cure. */
  first(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    this.#begin(belief, mass, done);
    return this.#chooser.first(arrangement, { cure: this.#cure, cost: this.#cost, done: this.#done }, mass);
  }

  #begin(belief: Belief, mass: number, done: Uint8Array): void {
    const { faultCount, stepCount, cure: cureTable, harm: harmTable, minutes } = this.#bench;
    const cure = this.#cure;
    const cost = this.#cost;
    this.#belief.set(belief);
    this.#done.set(done);
    cure.fill(0);
    for (let s = 0; s < stepCount; s++) cost[s] = mass * (minutes[s] as number);
    for (let f = 0; f < faultCount; f++) {
      const weight = belief[f] as number;
      if (weight === 0) continue;
      const row = f * stepCount;
      for (let s = 0; s < stepCount; s++) cure[s] = (cure[s] as number) + weight * (cureTable[row + s] as number);
      if (harmTable)
        for (let s = 0; s < stepCount; s++) cost[s] = (cost[s] as number) + weight * (harmTable[row + s] as number);
    }
  }

  #endingOf(step: number): number {
    const ending = this.#bench.problem.steps[step]?.ending;
    const curable = this.#bench.cures[step];
    if (!ending || !curable) return 0;
    let sum = 0;
    for (let i = 0; i < curable.length; i++) {
      const f = curable[i] as number;
      sum += (this.#belief[f] as number) * (ending[f] as number);
    }
    return sum;
  }

  /** Takes what the step cures out of belief, chances and charges; returns the mass that is left. */
  #takeAway(step: number, mass: number): number {
    const { stepCount, cure: cureTable, harm: harmTable, minutes } = this.#bench;
    const cure = this.#cure;
    const cost = this.#cost;
    const curable = this.#bench.cures[step] as Int32Array;
    let gone = 0;
    for (let i = 0; i < curable.length; i++) {
      const f = curable[i] as number;
      const row = f * stepCount;
      const cured = (this.#belief[f] as number) * (cureTable[row + step] as number);
      if (cured === 0) continue;
      gone += cured;
      this.#belief[f] = (this.#belief[f] as number) - cured;
      for (let s = 0; s < stepCount; s++) cure[s] = (cure[s] as number) - cured * (cureTable[row + s] as number);
      if (harmTable)
        for (let s = 0; s < stepCount; s++) cost[s] = (cost[s] as number) - cured * (harmTable[row + s] as number);
    }
    for (let s = 0; s < stepCount; s++) cost[s] = (cost[s] as number) - gone * (minutes[s] as number);
    this.#done[step] = 1;
    return mass - gone;
  }
}
