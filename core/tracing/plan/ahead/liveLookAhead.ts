import { at, dot, nth } from '../../../figures/rows.ts';
import { FixedOrder } from '../orders/fixedOrder.ts';
import { LIVE_LEFT_OVER, RatioLine } from '../orders/line.ts';
import { RatioSums } from '../orders/ratioSums.ts';
import { MOST_CANDIDATES, shortlist } from '../orders/shortlist.ts';
import { afterOutcome, type CompiledProblem } from '../problem/compiledProblem.ts';
import type { Effort } from '../problem/effort.ts';
import { clearlyLess, TIE } from '../problem/problem.ts';
import { minutesOfDoing } from '../states/minutesOfDoing.ts';
import type { PlanState } from '../states/planState.ts';

/** A line of steps to be followed as it is, and its minutes × mass at the belief it was made for. */
type FixedPolicy = { readonly value: number; readonly order: Int32Array };
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
  readonly #compiled: CompiledProblem;
  readonly #effort: Effort;
  readonly #line: RatioLine;
  readonly #fixed: FixedOrder;
  readonly #sums: RatioSums;
  readonly #first: Float64Array;
  readonly #second: Float64Array;
  readonly #done: Uint8Array;
  /** Minutes per fault of a fixed order: the one after the first outcome, and the one of the second outcome alone. */
  readonly #after: Float64Array;
  readonly #alone: Float64Array;
  /** What comes after each outcome of each step, as seen from the state chosen for last. */
  #policies: readonly (readonly FixedPolicy[])[] = [];
  #ranked: readonly number[] = [];
  /** Minutes × mass of doing each step next, by the depth asked for; NaN for steps done, pruned or given up. */
  readonly values: Float64Array;
  /** The same by one step of look-ahead. */
  readonly oneStep: Float64Array;

  constructor(compiled: CompiledProblem, depth: 1 | 2, effort: Effort) {
    this.#compiled = compiled;
    this.depth = depth;
    this.#effort = effort;
    this.#line = new RatioLine(compiled, effort, LIVE_LEFT_OVER);
    this.#fixed = new FixedOrder(compiled);
    this.#sums = new RatioSums(compiled, compiled.aimedBy);
    this.#first = new Float64Array(compiled.faultCount);
    this.#second = new Float64Array(compiled.faultCount);
    this.#done = new Uint8Array(compiled.stepCount);
    this.#after = new Float64Array(compiled.faultCount);
    this.#alone = new Float64Array(compiled.faultCount);
    this.values = new Float64Array(compiled.stepCount);
    this.oneStep = new Float64Array(compiled.stepCount);
  }

  /** The step to do next, or -1 when handing over is cheaper; fills `values` and `oneStep`. */
  choose(given: PlanState): number {
    const state = this.#own(given);
    this.#look(state);
    this.values.set(this.oneStep);
    if (this.depth === 2) {
      this.values.fill(Number.NaN);
      let least = Number.POSITIVE_INFINITY;
      for (const s of this.#ranked.slice(0, MOST_CANDIDATES)) {
        this.#effort.look();
        const value = this.#twoSteps(state, s, least);
        this.values[s] = value;
        if (value < least) least = value;
      }
    }
    let best = -1;
    this.values.forEach((value, s) => {
      if (!Number.isNaN(value) && (best < 0 || clearlyLess(value, at(this.values, best)))) best = s;
    });
    const stopping = given.mass * this.#compiled.problem.handOver;
    return best >= 0 && clearlyLess(stopping, at(this.values, best)) ? -1 : best;
  }

  /** Looks two steps ahead from a step that was given up; by the same sums as `choose`, for the same state. */
  lookInto(given: PlanState, step: number): number {
    return this.#twoSteps(this.#own(given), step, Number.POSITIVE_INFINITY);
  }

  /** Minutes × mass after one outcome of a step, for the state last chosen for, by the look-ahead that is left after it. */
  valueAfter(given: PlanState, step: number, outcome: number): number {
    const policy = this.#policies[step]?.[(this.#compiled.goingOn[step] ?? []).indexOf(outcome)];
    if (!policy) return 0;
    if (this.depth === 1) return policy.value;
    const state = this.#own(given);
    this.#done[step] = 1;
    const { to } = this.#compiled.arrangements.move(given.arrangement, step);
    return this.#best(this.#afterOutcome(state, step, outcome, to, this.#first), policy);
  }

  /** The state with steps done that are ours to change. */
  #own(given: PlanState): PlanState {
    this.#done.set(given.done);
    return { ...given, done: this.#done };
  }

  #afterOutcome(state: PlanState, step: number, outcome: number, to: number, into: Float64Array): PlanState {
    const mass = afterOutcome(this.#compiled, state.belief, step, outcome, into);
    return { belief: into, mass, done: this.#done, arrangement: to, key: 0 };
  }

  /** One step ahead from every step left, and the lines that come up. */
  #look(state: PlanState): void {
    const { stepCount } = this.#compiled;
    const policies: FixedPolicy[][] = [];
    for (let s = 0; s < stepCount; s++) {
      this.oneStep[s] = Number.NaN;
      if (state.done[s] === 1) continue;
      const own: FixedPolicy[] = [];
      this.oneStep[s] = minutesOfDoing(this.#compiled, state, s, (_state, _step, _i, outcome, to) => {
        const { minutes, order, kept } = this.#line.follow(this.#afterOutcome(state, s, outcome, to, this.#first));
        own.push({ value: minutes, order: order.slice(0, kept) });
        return minutes;
      });
      policies[s] = own;
    }
    this.#policies = policies;
    this.#ranked = [...this.oneStep.keys()]
      .filter((s) => !Number.isNaN(at(this.oneStep, s)))
      .sort((a, b) => at(this.oneStep, a) - at(this.oneStep, b) || a - b);
  }

  /** NaN when the figure is above `enough`. */
  #twoSteps(state: PlanState, step: number, enough: number): number {
    const policies = nth(this.#policies, step);
    const valueAfter = (_state: PlanState, _step: number, i: number, outcome: number, to: number): number => {
      const after = this.#afterOutcome(state, step, outcome, to, this.#first);
      return after.mass > 0 ? this.#best(after, nth(policies, i)) : 0;
    };
    const value = minutesOfDoing(this.#compiled, state, step, valueAfter, enough);
    return value > enough * (1 + TIE) ? Number.NaN : value;
  }

  /** Handing over, going on along the line, or one step and then a line: whichever is cheapest. */
  #best(state: PlanState, policy: FixedPolicy): number {
    const seconds = shortlist(this.#compiled, this.#ranked, state, this.#sums)
      .map((s) => ({ s, value: this.#secondByFixedOrder(state, s, policy) }))
      .sort((a, b) => a.value - b.value || a.s - b.s);
    let best = Math.min(state.mass * this.#compiled.problem.handOver, policy.value);
    for (const { s, value } of seconds.slice(0, REFINED))
      best = Math.min(best, value, this.#oneStep(state, s, Math.min(best, value)));
    return best;
  }

  /** One step, then the better of two known orders by what came out. */
  #secondByFixedOrder(state: PlanState, step: number, policy: FixedPolicy): number {
    const { handOver } = this.#compiled.problem;
    let isAfterKnown = false;
    return minutesOfDoing(this.#compiled, state, step, (_state, _step, i, outcome, to) => {
      if (!isAfterKnown) this.#fixed.minutesOf(policy.order, this.#done, to, this.#after);
      isAfterKnown = true;
      const left = afterOutcome(this.#compiled, state.belief, step, outcome, this.#second);
      if (left <= 0) return 0;
      this.#fixed.minutesOf(nth(nth(this.#policies, step), i).order, this.#done, to, this.#alone);
      return Math.min(left * handOver, dot(this.#second, this.#after), dot(this.#second, this.#alone));
    });
  }

  readonly #thenLine = (state: PlanState, step: number, _i: number, outcome: number, to: number): number => {
    const after = this.#afterOutcome(state, step, outcome, to, this.#second);
    return after.mass > 0 ? this.#line.follow(after).minutes : 0;
  };

  /** One step, then the line that each outcome leads to. Given up (a figure above `enough`) once it cannot be better. */
  #oneStep(state: PlanState, step: number, enough: number): number {
    return minutesOfDoing(this.#compiled, state, step, this.#thenLine, enough);
  }
}
