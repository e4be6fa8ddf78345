import { afterOutcome, type Belief, type Bench, chargeOf } from './bench.ts';
import type { Effort } from './effort.ts';
import { FixedOrder, weighed } from './fixedOrder.ts';
import { LIVE_LEFT_OVER, RatioLine } from './line.ts';
import { MOST_CANDIDATES } from './lookAhead.ts';
import { clearlyLess, TIE } from './problem.ts';
import { Shortlist } from './shortlist.ts';
import type { Stand } from './stand.ts';

/** A line of steps and its minutes × mass at the belief it was made for. */
type Line = { readonly value: number; readonly order: Int32Array };
/** Of the second steps by fixed orders, so many are worked out with lines of their own. */
const REFINED = 2;

/**
 * Looks one or two steps ahead on a live bench, where an answer has to come at once. One step: the step, then the line
 * by p/c that each outcome leads to. Two steps: the second step is found by following lines already known, in the order
 * they have (the one after the first step's outcome, the one that the second step's outcome alone would lead to), and the
 * best ones are then worked out with lines made for just that. Every figure is that of a policy that can be followed.
 */
export class LiveLookAhead {
  readonly depth: 1 | 2;
  readonly #bench: Bench;
  readonly #effort: Effort;
  readonly #line: RatioLine;
  readonly #fixed: FixedOrder;
  readonly #shortlist: Shortlist;
  readonly #first: Float64Array;
  readonly #second: Float64Array;
  readonly #done: Uint8Array;
  readonly #after: Float64Array;
  readonly #alone: Float64Array;
  /** Lines after each outcome of each step, as seen from the stand chosen for last. */
  #lines: readonly (readonly Line[])[] = [];
  #ranked: readonly number[] = [];
  /** Minutes × mass of doing each step next, by the depth asked for; NaN for steps done, pruned or given up. */
  readonly values: Float64Array;
  /** The same by one step of look-ahead. */
  readonly oneStep: Float64Array;

  constructor(bench: Bench, depth: 1 | 2, effort: Effort) {
    this.#bench = bench;
    this.depth = depth;
    this.#effort = effort;
    this.#line = new RatioLine(bench, LIVE_LEFT_OVER);
    this.#fixed = new FixedOrder(bench);
    this.#shortlist = new Shortlist(bench);
    this.#first = new Float64Array(bench.faultCount);
    this.#second = new Float64Array(bench.faultCount);
    this.#done = new Uint8Array(bench.stepCount);
    this.#after = new Float64Array(bench.faultCount);
    this.#alone = new Float64Array(bench.faultCount);
    this.values = new Float64Array(bench.stepCount);
    this.oneStep = new Float64Array(bench.stepCount);
  }

  /** The step to do next, or -1 when handing over is cheaper; fills `values` and `oneStep`. */
  choose(stand: Stand): number {
    this.#look(stand);
    this.values.set(this.oneStep);
    if (this.depth === 2) {
      this.values.fill(Number.NaN);
      let least = Number.POSITIVE_INFINITY;
      for (const s of this.#ranked.slice(0, MOST_CANDIDATES)) {
        this.#effort.look();
        const value = this.#twoSteps(stand, s, least);
        this.values[s] = value;
        if (value < least) least = value;
      }
    }
    let best = -1;
    this.values.forEach((value, s) => {
      if (!Number.isNaN(value) && (best < 0 || clearlyLess(value, this.values[best] as number))) best = s;
    });
    const stopping = stand.mass * this.#bench.problem.handOver;
    return best >= 0 && clearlyLess(stopping, this.values[best] as number) ? -1 : best;
  }

  /** Looks two steps ahead from a step that was given up; by the same sums as `choose`, for the same stand. */
  lookInto(stand: Stand, step: number): number {
    this.#done.set(stand.done);
    return this.#twoSteps(stand, step, Number.POSITIVE_INFINITY);
  }

  /** Minutes × mass after one outcome of a step, for the stand last chosen for, by the look-ahead that is left after it. */
  valueAfter(stand: Stand, step: number, outcome: number): number {
    const i = (this.#bench.goingOn[step] ?? []).indexOf(outcome);
    const line = this.#lines[step]?.[i];
    if (!line) return 0;
    if (this.depth === 1) return line.value;
    const mass = afterOutcome(this.#bench, stand.belief, step, outcome, this.#first);
    this.#done.set(stand.done);
    this.#done[step] = 1;
    return this.#best(this.#first, mass, this.#bench.arrangements.move(stand.arrangement, step).to, line);
  }

  /** One step ahead from every step left, and the lines that come up. */
  #look(stand: Stand): void {
    const { arrangements, goingOn, stepCount } = this.#bench;
    this.#done.set(stand.done);
    const lines: Line[][] = [];
    for (let s = 0; s < stepCount; s++) {
      this.oneStep[s] = Number.NaN;
      if (stand.done[s] === 1) continue;
      const { price, to } = arrangements.move(stand.arrangement, s);
      this.#done[s] = 1;
      const own = (goingOn[s] as readonly number[]).map((outcome): Line => {
        const mass = afterOutcome(this.#bench, stand.belief, s, outcome, this.#first);
        const value = this.#valueOf(this.#first, mass, to);
        return { value, order: mass > 0 ? this.#line.order.slice(0, this.#line.kept) : new Int32Array() };
      });
      this.#done[s] = 0;
      lines[s] = own;
      this.oneStep[s] = own.reduce(
        (sum, line) => sum + line.value,
        chargeOf(this.#bench, stand.belief, stand.mass, s) + stand.mass * price,
      );
    }
    this.#lines = lines;
    this.#ranked = [...this.oneStep.keys()]
      .filter((s) => !Number.isNaN(this.oneStep[s] as number))
      .sort((a, b) => (this.oneStep[a] as number) - (this.oneStep[b] as number) || a - b);
  }

  #valueOf(belief: Belief, mass: number, arrangement: number): number {
    const value = this.#line.value(belief, mass, this.#done, arrangement);
    this.#effort.spend(4 * this.#bench.faultCount + this.#line.length * this.#bench.stepCount);
    return value;
  }

  /** NaN when the figure is above `enough`. */
  #twoSteps(stand: Stand, step: number, enough: number): number {
    const { price, to } = this.#bench.arrangements.move(stand.arrangement, step);
    let value = chargeOf(this.#bench, stand.belief, stand.mass, step) + stand.mass * price;
    const outcomes = this.#bench.goingOn[step] as readonly number[];
    this.#done[step] = 1;
    for (let i = 0; i < outcomes.length && value <= enough * (1 + TIE); i++) {
      const mass = afterOutcome(this.#bench, stand.belief, step, outcomes[i] as number, this.#first);
      if (mass > 0) value += this.#best(this.#first, mass, to, this.#lines[step]?.[i] as Line);
    }
    this.#done[step] = 0;
    return value > enough * (1 + TIE) ? Number.NaN : value;
  }

  /** Handing over, going on along the line, or one step and then a line: whichever is cheapest. */
  #best(belief: Belief, mass: number, arrangement: number, line: Line): number {
    const seconds = this.#shortlist
      .of(this.#ranked, belief, mass, this.#done, arrangement)
      .map((s) => ({ s, value: this.#second1(belief, mass, arrangement, s, line) }))
      .sort((a, b) => a.value - b.value || a.s - b.s);
    let best = Math.min(mass * this.#bench.problem.handOver, line.value);
    for (const { s, value } of seconds.slice(0, REFINED))
      best = Math.min(best, value, this.#oneStep(belief, mass, arrangement, s, Math.min(best, value)));
    return best;
  }

  /** One step, then the better of two known orders by what came out. */
  #second1(belief: Belief, mass: number, arrangement: number, step: number, line: Line): number {
    const { price, to } = this.#bench.arrangements.move(arrangement, step);
    const { handOver } = this.#bench.problem;
    let value = chargeOf(this.#bench, belief, mass, step) + mass * price;
    const outcomes = this.#bench.goingOn[step] as readonly number[];
    this.#done[step] = 1;
    this.#fixed.minutesOf(line.order, this.#done, to, this.#after);
    for (let i = 0; i < outcomes.length; i++) {
      const left = afterOutcome(this.#bench, belief, step, outcomes[i] as number, this.#second);
      if (left <= 0) continue;
      this.#fixed.minutesOf(this.#lines[step]?.[i]?.order as Int32Array, this.#done, to, this.#alone);
      value += Math.min(left * handOver, weighed(this.#second, this.#after), weighed(this.#second, this.#alone));
    }
    this.#done[step] = 0;
    return value;
  }

  /** One step, then the line that each outcome leads to. Given up (a figure above `enough`) once it cannot be better. */
  #oneStep(belief: Belief, mass: number, arrangement: number, step: number, enough: number): number {
    const { price, to } = this.#bench.arrangements.move(arrangement, step);
    let value = chargeOf(this.#bench, belief, mass, step) + mass * price;
    const outcomes = this.#bench.goingOn[step] as readonly number[];
    this.#done[step] = 1;
    for (let i = 0; i < outcomes.length && value <= enough * (1 + TIE); i++) {
      const left = afterOutcome(this.#bench, belief, step, outcomes[i] as number, this.#second);
      if (left > 0) value += this.#valueOf(this.#second, left, to);
    }
    this.#done[step] = 0;
    return value;
  }
}
