import { addRow, type Belief, type Bench } from './bench.ts';
import { RatioChooser } from './ratio.ts';
import { Sight } from './sight.ts';

/** What is left below this share of the belief is charged as handed over instead of being followed further. */
const LEFT_OVER = 1e-7;
/** The same on a live bench, where an answer has to come at once: a tenth of a percent of what handing over costs. */
export const LIVE_LEFT_OVER = 1e-3;

/** A fault with less belief than this share of what may be left over is not followed along the line. */
const NEGLIGIBLE = 0.01;

/**
 * The minutes of going on by p/c without looking at which outcome a step had unless it cures: one line of steps,
 * stopped where handing over is cheaper. It is a policy like any other and its value is exact, at the price of one
 * pass: chances and harms are kept up to date by taking away what each step cures.
 */
export class RatioLine {
  readonly #bench: Bench;
  readonly #chooser: RatioChooser;
  readonly #sight: Sight;
  /** The faults that are still followed, and the belief in each of them. */
  readonly #followed: Int32Array;
  readonly #belief: Float64Array;
  readonly #done: Uint8Array;
  /** Minutes × mass of each step of the line, and the mass before it. */
  readonly #charges: Float64Array;
  readonly #masses: Float64Array;
  readonly #leftOver: number;

  constructor(bench: Bench, leftOver = LEFT_OVER) {
    this.#bench = bench;
    this.#leftOver = leftOver;
    this.#chooser = new RatioChooser(bench, bench.aims, 1 / bench.problem.handOver);
    this.#sight = new Sight(bench, bench.aimedBy);
    this.#followed = new Int32Array(bench.faultCount);
    this.#belief = new Float64Array(bench.faultCount);
    this.#done = new Uint8Array(bench.stepCount);
    this.order = new Int32Array(bench.stepCount);
    this.#charges = new Float64Array(bench.stepCount + 1);
    this.#masses = new Float64Array(bench.stepCount + 1);
  }

  /** Steps in the last line: a measure of work done. */
  length = 0;
  /** The steps of the last line in their order, and how many of them are done before handing over is cheaper. */
  readonly order: Int32Array;
  kept = 0;

  /**
   * Expected minutes × mass from here on, in the amortised count of `Move.price`: closing what is open already is not
   * in it. `mass` is the total of `belief`; neither `belief` nor `done` is changed.
   */
  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    if (mass <= 0) return 0;
    const { arrangements, problem, minutes, stepCount } = this.#bench;
    this.#done.set(done);
    let following = this.#follow(belief, mass);
    let left = mass;
    let at = arrangement;
    let length = 0;
    while (left > mass * this.#leftOver && length < stepCount) {
      const step = this.#chooser.first(at, this.#sight, left, this.#done);
      if (step < 0) break;
      const move = arrangements.move(at, step);
      const charge = left * (move.price + (minutes[step] as number));
      this.#masses[length] = left;
      this.order[length] = step;
      following = this.#take(step, following, mass);
      this.#charges[length] = charge + this.#costs;
      length++;
      at = move.to;
      left -= this.#gone;
    }
    this.length = length;
    this.kept = length;
    let value = Math.max(0, left) * problem.handOver;
    for (let i = length - 1; i >= 0; i--) {
      const goingOn = (this.#charges[i] as number) + value;
      const stopping = (this.#masses[i] as number) * problem.handOver;
      if (stopping <= goingOn) this.kept = i;
      value = Math.min(stopping, goingOn);
    }
    return value;
  }

  /** Looks at a belief; what is nearly out of the question is not followed and ends as handed over. Returns how many are. */
  #follow(belief: Belief, mass: number): number {
    const least = mass * this.#leftOver * NEGLIGIBLE;
    const { cure, harm } = this.#sight;
    cure.fill(0);
    harm.fill(0);
    let following = 0;
    for (let f = 0; f < belief.length; f++) {
      const share = belief[f] as number;
      if (share <= least) continue;
      this.#followed[following] = f;
      this.#belief[following++] = share;
      this.#sight.add(this.#bench, f, share);
    }
    return following;
  }

  /** Of the last step taken: what it cost by fault, minutes × mass, and the mass that it cured. */
  #costs = 0;
  #gone = 0;

  /** Takes what a step cures out of belief, chances and harms; returns how many faults are still followed. */
  #take(step: number, following: number, mass: number): number {
    const least = mass * this.#leftOver * NEGLIGIBLE;
    const { cureRow, costRow, aimedBy, harmedBy } = this.#bench;
    const { cure, harm } = this.#sight;
    const chance = cureRow[step] as Float64Array;
    const cost = costRow[step];
    const followed = this.#followed;
    const belief = this.#belief;
    let costs = 0;
    let gone = 0;
    let kept = 0;
    for (let i = 0; i < following; i++) {
      const f = followed[i] as number;
      const share = belief[i] as number;
      const cured = share * (chance[f] as number);
      const left = share - cured;
      if (cost) costs += share * (cost[f] as number);
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
    this.#costs = costs;
    this.#gone = gone;
    return kept;
  }
}
