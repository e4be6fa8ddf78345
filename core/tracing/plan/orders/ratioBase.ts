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

/** p/c with full belief update after every outcome; each state is worked out once. For small state spaces. */
export class RatioBase implements Base {
  readonly #compiled: CompiledProblem;
  readonly #space: StateSpace;
  readonly #chooser: RatioChooser;
  readonly #known: StateValues;
  readonly #effort: Effort;
  readonly #beliefs: BeliefBuffers;
  readonly #done: Uint8Array;
  readonly #sums: RatioSums;

  constructor(compiled: CompiledProblem, space: StateSpace, effort: Effort) {
    this.#compiled = compiled;
    this.#space = space;
    this.#effort = effort;
    this.#chooser = new RatioChooser(compiled);
    this.#known = new StateValues(space.most);
    this.#beliefs = new BeliefBuffers(compiled.faultCount);
    this.#done = new Uint8Array(compiled.stepCount);
    this.#sums = new RatioSums(compiled);
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
    return this.#chooser.first(state, this.#sums.of(state.belief));
  }

  #value(state: DeepState): number {
    const { problem, faultCount, stepCount } = this.#compiled;
    const place = stateKeyOf(this.#space, state.key, state.arrangement);
    const known = this.#known.get(place);
    if (!Number.isNaN(known)) return known;
    this.#effort.spend(faultCount * stepCount);
    const stopping = state.mass * problem.handOver;
    const step = this.first(state);
    const going = step < 0 ? stopping : minutesOfDoing(this.#compiled, state, step, this.#valueAfter);
    const value = clearlyLess(stopping, going) ? stopping : going;
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
