import { at } from '../../../figures/rows.ts';
import type { Base } from '../orders/base.ts';
import { RatioSums } from '../orders/ratioSums.ts';
import { MOST_CANDIDATES, shortlist } from '../orders/shortlist.ts';
import { afterOutcome, type CompiledProblem } from '../problem/compiledProblem.ts';
import { clearlyLess } from '../problem/problem.ts';
import { minutesOfDoing } from '../states/minutesOfDoing.ts';
import type { PlanState } from '../states/planState.ts';
import { keyAfter, type StateSpace, StateValues, stateKeyOf } from '../states/stateSpace.ts';

export type LookAheadOptions = {
  /** 1: the step, then p/c. 2: the step, then the best step by one-step value, then p/c. */
  readonly depth: 1 | 2;
  /** Numbers states so that one-step values are remembered; left out where states are too many. */
  readonly space?: StateSpace | undefined;
  /** Looks into so many steps at the second level, see `shortlist`; left out: into all. The base's own step is always among the answers. */
  readonly most?: number | undefined;
};

/** A state whose fields are written again and again. */
type Rewritten = { -readonly [field in keyof PlanState]: PlanState[field] };

/**
 * Improves a base policy by looking one or two steps ahead (rollout: Bertsekas & Tsitsiklis 1996, section 6.1; the
 * improved policy is never worse than its base when the base is evaluated exactly and its own step stays among the
 * candidates, which the one-step value ensures).
 */
export class LookAhead {
  readonly #compiled: CompiledProblem;
  readonly #base: Base;
  readonly #options: LookAheadOptions;
  /** The states after one and after two outcomes: written anew for each that is looked at, and kept by nobody. */
  readonly #first: Rewritten;
  readonly #second: Rewritten;
  readonly #done: Uint8Array;
  readonly #known: StateValues | undefined;
  /** Steps in the order of their one-step value at the first level. */
  #order: readonly number[];
  readonly #sums: RatioSums;
  /** Minutes × mass of doing each step next, by the depth asked for; NaN for steps done or pruned. */
  readonly values: Float64Array;
  /** The same by one step of look-ahead. */
  readonly oneStep: Float64Array;

  constructor(compiled: CompiledProblem, base: Base, options: LookAheadOptions) {
    this.#compiled = compiled;
    this.#base = base;
    this.#options = options;
    this.#done = new Uint8Array(compiled.stepCount);
    const unwritten = (): Rewritten => ({
      belief: new Float64Array(compiled.faultCount),
      mass: 0,
      done: this.#done,
      arrangement: 0,
      key: 0,
    });
    this.#first = unwritten();
    this.#second = unwritten();
    this.#known = options.space && options.depth === 2 ? new StateValues(options.space.most) : undefined;
    this.#order = compiled.problem.steps.map((_, s) => s);
    this.#sums = new RatioSums(compiled);
    this.values = new Float64Array(compiled.stepCount);
    this.oneStep = new Float64Array(compiled.stepCount);
  }

  /** The step to do next, or -1 when handing over is cheaper; fills `values` and `oneStep`. */
  choose(given: PlanState): number {
    const { stepCount } = this.#compiled;
    const state = this.#own(given);
    for (let s = 0; s < stepCount; s++) this.oneStep[s] = given.done[s] === 1 ? Number.NaN : this.#oneStep(state, s);
    this.values.set(this.oneStep);
    if (this.#options.depth === 2) {
      const candidates = this.#candidates();
      for (let s = 0; s < stepCount; s++)
        this.values[s] = candidates.has(s)
          ? minutesOfDoing(this.#compiled, state, s, this.#thenBestOneStep)
          : Number.NaN;
    }
    let best = -1;
    for (let s = 0; s < stepCount; s++) {
      const value = at(this.values, s);
      if (!Number.isNaN(value) && (best < 0 || clearlyLess(value, at(this.values, best)))) best = s;
    }
    const stopping = given.mass * this.#compiled.problem.handOver;
    return best >= 0 && clearlyLess(stopping, at(this.values, best)) ? -1 : best;
  }

  /** Minutes × mass of doing a step next and going on by the base; some figure above `enough` when it is above that. */
  oneStepOf(given: PlanState, step: number, enough: number): number {
    return this.#oneStep(this.#own(given), step, enough);
  }

  /** The state with steps done that are ours to change. */
  #own(given: PlanState): PlanState {
    this.#done.set(given.done);
    return { ...given, done: this.#done };
  }

  #candidates(): ReadonlySet<number> {
    const left = [...this.oneStep.keys()].filter((s) => !Number.isNaN(at(this.oneStep, s)));
    left.sort((a, b) => at(this.oneStep, a) - at(this.oneStep, b) || a - b);
    this.#order = left;
    return new Set(left.slice(0, MOST_CANDIDATES));
  }

  #keyAfter({ key }: PlanState, step: number, i: number): number {
    const { space } = this.#options;
    return space ? keyAfter(space, key, step, i) : 0;
  }

  /** The best one-step value of a state that was looked at before; not a number where it was not. */
  #knownOf(key: number, arrangement: number): number {
    const { space } = this.#options;
    return space && this.#known ? this.#known.get(stateKeyOf(space, key, arrangement)) : Number.NaN;
  }

  /** The state after an outcome that goes on, written into `into`. */
  #after(into: Rewritten, state: PlanState, step: number, outcome: number): PlanState {
    into.mass = afterOutcome(this.#compiled, state.belief, step, outcome, into.belief);
    return into;
  }

  readonly #thenBestOneStep = (state: PlanState, step: number, i: number, outcome: number, to: number): number => {
    const key = this.#keyAfter(state, step, i);
    const known = this.#knownOf(key, to);
    if (!Number.isNaN(known)) return known;
    this.#first.arrangement = to;
    this.#first.key = key;
    const after = this.#after(this.#first, state, step, outcome);
    return after.mass > 0 ? this.#bestOneStep(after) : 0;
  };

  readonly #thenBase = (state: PlanState, step: number, i: number, outcome: number, to: number): number => {
    const key = this.#keyAfter(state, step, i);
    const known = this.#base.known(key, to);
    if (!Number.isNaN(known)) return known;
    this.#second.arrangement = to;
    this.#second.key = key;
    const after = this.#after(this.#second, state, step, outcome);
    return after.mass > 0 ? this.#base.value(after) : 0;
  };

  /** Handing over, going on by the base, or one step and then the base: whichever is cheapest. */
  #bestOneStep(state: PlanState): number {
    const { space, most = Number.POSITIVE_INFINITY } = this.#options;
    let best = this.#base.value(state);
    for (const s of shortlist(this.#compiled, this.#order, state, this.#sums, most))
      best = Math.min(best, this.#oneStep(state, s, best));
    if (space) this.#known?.set(stateKeyOf(space, state.key, state.arrangement), best);
    return best;
  }

  /** One step, then the base. Given up (a figure above `enough`) as soon as it cannot be better than `enough`. */
  #oneStep(state: PlanState, step: number, enough = Number.POSITIVE_INFINITY): number {
    return minutesOfDoing(this.#compiled, state, step, this.#thenBase, enough);
  }
}
