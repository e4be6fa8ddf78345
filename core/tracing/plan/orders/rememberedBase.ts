import { afterOutcome, type CompiledProblem } from '../problem/compiledProblem.ts';
import type { Effort } from '../problem/effort.ts';
import { clearlyLess } from '../problem/problem.ts';
import { BeliefBuffers, type DeepState } from '../states/beliefBuffers.ts';
import { minutesOfDoing } from '../states/minutesOfDoing.ts';
import type { PlanState } from '../states/planState.ts';
import { keyAfter, type StateSpace, StateValues, stateKeyOf } from '../states/stateSpace.ts';
import type { Base } from './base.ts';
import { RatioChooser } from './ratio.ts';
import { RatioSums } from './ratioSums.ts';

/** What is done next in a state, and how many multiplications it takes to say so. */
export type RuleOfNext = { readonly first: (state: PlanState) => number; readonly work: number };

/**
 * Going on by one rule with full belief update after every outcome, handing over where that is cheaper; each state is
 * worked out once. For small state spaces.
 */
export class RememberedBase implements Base {
  readonly #compiled: CompiledProblem;
  readonly #space: StateSpace;
  readonly #next: RuleOfNext;
  readonly #known: StateValues;
  readonly #effort: Effort;
  readonly #beliefs: BeliefBuffers;
  readonly #done: Uint8Array;

  constructor(compiled: CompiledProblem, space: StateSpace, effort: Effort, next: RuleOfNext) {
    this.#compiled = compiled;
    this.#space = space;
    this.#effort = effort;
    this.#next = next;
    this.#known = new StateValues(space.most);
    this.#beliefs = new BeliefBuffers(compiled.faultCount);
    this.#done = new Uint8Array(compiled.stepCount);
  }

  known(key: number, arrangement: number): number {
    return this.#known.get(stateKeyOf(this.#space, key, arrangement));
  }

  value({ belief, mass, done, arrangement, key }: PlanState): number {
    const known = this.known(key, arrangement);
    if (!Number.isNaN(known)) return known;
    if (mass <= 0) return 0;
    this.#done.set(done);
    return this.#workOut({ belief, mass, done: this.#done, arrangement, key, depth: 0 });
  }

  first(state: PlanState): number {
    return this.#next.first(state);
  }

  #workOut(state: DeepState): number {
    this.#effort.spend(this.#next.work);
    const stopping = state.mass * this.#compiled.problem.handOver;
    const step = this.first(state);
    const going = step < 0 ? stopping : minutesOfDoing(this.#compiled, state, step, this.#valueAfter);
    const value = clearlyLess(stopping, going) ? stopping : going;
    this.#known.set(stateKeyOf(this.#space, state.key, state.arrangement), value);
    return value;
  }

  /** What is known of the state it leads to is taken as it is: most states are met again and again. */
  readonly #valueAfter = (state: DeepState, step: number, i: number, outcome: number, arrangement: number): number => {
    const key = keyAfter(this.#space, state.key, step, i);
    const known = this.known(key, arrangement);
    if (!Number.isNaN(known)) return known;
    const belief = this.#beliefs.at(state.depth);
    const mass = afterOutcome(this.#compiled, state.belief, step, outcome, belief);
    if (mass <= 0) return 0;
    return this.#workOut({ belief, mass, done: this.#done, arrangement, key, depth: state.depth + 1 });
  };
}

/** p/c with full belief update after every outcome. */
export function ratioBase(compiled: CompiledProblem, space: StateSpace, effort: Effort): RememberedBase {
  const chooser = new RatioChooser(compiled);
  const sums = new RatioSums(compiled);
  const first = (state: PlanState): number => chooser.first(state, sums.of(state.belief));
  return new RememberedBase(compiled, space, effort, { first, work: compiled.faultCount * compiled.stepCount });
}
