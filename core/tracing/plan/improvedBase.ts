import type { Base } from './base.ts';
import { afterOutcome, type Belief, type Bench, chargeOf } from './bench.ts';
import type { Effort } from './effort.ts';
import { LookAhead } from './lookAhead.ts';
import { keyOf, type StateSpace, StateValues } from './stateSpace.ts';

/**
 * The base improved once: in every state the step with the best one-step value over it (rollout over rollout,
 * Bertsekas & Tsitsiklis 1996, section 6.1). It asks questions, which p/c alone never does. Nowhere worse than its
 * base, so neither is what looks ahead over it. For state spaces small enough to remember.
 */
export class ImprovedBase implements Base {
  readonly #bench: Bench;
  readonly #space: StateSpace;
  readonly #lookAhead: LookAhead;
  readonly #known: StateValues;
  readonly #effort: Effort;
  readonly #beliefs: Float64Array[] = [];
  readonly #done: Uint8Array;

  constructor(bench: Bench, base: Base, space: StateSpace, effort: Effort) {
    this.#bench = bench;
    this.#space = space;
    this.#lookAhead = new LookAhead(bench, base, { depth: 1, space });
    this.#known = new StateValues(space.most);
    this.#effort = effort;
    this.#done = new Uint8Array(bench.stepCount);
  }

  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number, outcomes: number): number {
    if (mass <= 0) return 0;
    const known = this.#known.get(keyOf(this.#space, outcomes, arrangement));
    if (!Number.isNaN(known)) return known;
    this.#done.set(done);
    return this.#value(belief, mass, arrangement, outcomes, 0);
  }

  first(belief: Belief, mass: number, done: Uint8Array, arrangement: number, outcomes: number): number {
    return this.#lookAhead.choose({ belief, mass, done, arrangement, key: outcomes });
  }

  #value(belief: Belief, mass: number, arrangement: number, outcomes: number, depth: number): number {
    const { arrangements, goingOn, problem, faultCount, stepCount } = this.#bench;
    const state = keyOf(this.#space, outcomes, arrangement);
    const known = this.#known.get(state);
    if (!Number.isNaN(known)) return known;
    this.#effort.spend(2 * faultCount * stepCount);
    const step = this.first(belief, mass, this.#done, arrangement, outcomes);
    let value = mass * problem.handOver;
    if (step >= 0) {
      const move = arrangements.move(arrangement, step);
      value = chargeOf(this.#bench, belief, mass, step) + mass * move.price;
      const next = this.#beliefAt(depth);
      const outcomesOn = goingOn[step] as readonly number[];
      this.#done[step] = 1;
      for (let i = 0; i < outcomesOn.length; i++) {
        const left = afterOutcome(this.#bench, belief, step, outcomesOn[i] as number, next);
        const key = outcomes + (this.#space.strides[step] as number) * (i + 1);
        if (left > 0) value += this.#value(next, left, move.to, key, depth + 1);
      }
      this.#done[step] = 0;
    }
    this.#known.set(state, value);
    return value;
  }

  #beliefAt(depth: number): Float64Array {
    const kept = this.#beliefs[depth] ?? new Float64Array(this.#bench.faultCount);
    this.#beliefs[depth] = kept;
    return kept;
  }
}
