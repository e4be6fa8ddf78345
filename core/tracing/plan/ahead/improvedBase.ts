import type { Base } from '../orders/base.ts';
import { afterOutcome, type CompiledProblem } from '../problem/compiledProblem.ts';
import type { Effort } from '../problem/effort.ts';
import { BeliefBuffers, type DeepState } from '../states/beliefBuffers.ts';
import { minutesOfDoing } from '../states/minutesOfDoing.ts';
import type { PlanState } from '../states/planState.ts';
import { keyAfter, type StateSpace, StateValues, stateKeyOf } from '../states/stateSpace.ts';
import { LookAhead } from './lookAhead.ts';

/**
 * The base improved once: in every state the step with the best one-step value over it (rollout over rollout,
 * Bertsekas & Tsitsiklis 1996, section 6.1). It asks questions, which p/c alone never does. Nowhere worse than its
 * base, so neither is what looks ahead over it. For state spaces small enough to remember.
 */
export class ImprovedBase implements Base {
  readonly #compiled: CompiledProblem;
  readonly #space: StateSpace;
  readonly #lookAhead: LookAhead;
  readonly #known: StateValues;
  readonly #effort: Effort;
  readonly #beliefs: BeliefBuffers;
  readonly #done: Uint8Array;

  constructor(compiled: CompiledProblem, base: Base, space: StateSpace, effort: Effort) {
    this.#compiled = compiled;
    this.#space = space;
    this.#lookAhead = new LookAhead(compiled, base, { depth: 1, space });
    this.#known = new StateValues(space.most);
    this.#effort = effort;
    this.#beliefs = new BeliefBuffers(compiled.faultCount);
    this.#done = new Uint8Array(compiled.stepCount);
  }

  value(state: PlanState): number {
    if (state.mass <= 0) return 0;
    const known = this.#known.get(stateKeyOf(this.#space, state.key, state.arrangement));
    if (!Number.isNaN(known)) return known;
    this.#done.set(state.done);
    const { belief, mass, arrangement, key } = state;
    return this.#value({ belief, mass, done: this.#done, arrangement, key, depth: 0 });
  }

  first(state: PlanState): number {
    return this.#lookAhead.choose(state);
  }

  #value(state: DeepState): number {
    const { problem, faultCount, stepCount } = this.#compiled;
    const place = stateKeyOf(this.#space, state.key, state.arrangement);
    const known = this.#known.get(place);
    if (!Number.isNaN(known)) return known;
    this.#effort.spend(2 * faultCount * stepCount);
    const step = this.first(state);
    const value =
      step < 0 ? state.mass * problem.handOver : minutesOfDoing(this.#compiled, state, step, this.#valueAfter);
    this.#known.set(place, value);
    return value;
  }

  readonly #valueAfter = (state: DeepState, step: number, i: number, outcome: number, arrangement: number): number => {
    const belief = this.#beliefs.at(state.depth);
    const mass = afterOutcome(this.#compiled, state.belief, step, outcome, belief);
    const key = keyAfter(this.#space, state.key, step, i);
    return mass <= 0 ? 0 : this.#value({ belief, mass, done: this.#done, arrangement, key, depth: state.depth + 1 });
  };
}
