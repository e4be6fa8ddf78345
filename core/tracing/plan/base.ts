import { afterOutcome, type Belief, type Bench, chargeOf } from './bench.ts';
import type { Effort } from './effort.ts';
import { RatioLine } from './line.ts';
import { clearlyLess } from './problem.ts';
import { RatioChooser } from './ratio.ts';
import { Sight } from './sight.ts';
import { keyOf, type StateSpace, StateValues } from './stateSpace.ts';

/**
 * What going on by p/c costs from a state: minutes × mass, exact for a stated policy. `outcomes` numbers the outcomes
 * so far in the state space and is only used to remember values.
 */
export interface Base {
  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number, outcomes: number): number;
  /** The step that going on by p/c would do now, or -1. */
  first(belief: Belief, mass: number, done: Uint8Array, arrangement: number, outcomes: number): number;
}

/** p/c with full belief update after every outcome; each state is worked out once. For small state spaces. */
export class RatioBase implements Base {
  readonly #bench: Bench;
  readonly #space: StateSpace;
  readonly #chooser: RatioChooser;
  readonly #known: StateValues;
  readonly #effort: Effort;
  readonly #beliefs: Float64Array[] = [];
  readonly #done: Uint8Array;
  readonly #sight: Sight;

  constructor(bench: Bench, space: StateSpace, effort: Effort) {
    this.#bench = bench;
    this.#space = space;
    this.#effort = effort;
    this.#chooser = new RatioChooser(bench);
    this.#known = new StateValues(space.most);
    this.#done = new Uint8Array(bench.stepCount);
    this.#sight = new Sight(bench);
  }

  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number, outcomes: number): number {
    if (mass <= 0) return 0;
    const known = this.#known.get(keyOf(this.#space, outcomes, arrangement));
    if (!Number.isNaN(known)) return known;
    this.#done.set(done);
    return this.#value(belief, mass, arrangement, outcomes, 0);
  }

  first(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    return this.#chooser.first(arrangement, this.#sight.of(this.#bench, belief), mass, done);
  }

  #value(belief: Belief, mass: number, arrangement: number, outcomes: number, depth: number): number {
    const { arrangements, goingOn, problem, faultCount, stepCount } = this.#bench;
    const state = keyOf(this.#space, outcomes, arrangement);
    const known = this.#known.get(state);
    if (!Number.isNaN(known)) return known;
    this.#effort.spend(faultCount * stepCount);
    const stopping = mass * problem.handOver;
    const step = this.first(belief, mass, this.#done, arrangement);
    let value = stopping;
    if (step >= 0) {
      const move = arrangements.move(arrangement, step);
      let going = chargeOf(this.#bench, belief, mass, step) + mass * move.price;
      const next = this.#beliefAt(depth);
      this.#done[step] = 1;
      (goingOn[step] ?? []).forEach((outcome, i) => {
        const left = afterOutcome(this.#bench, belief, step, outcome, next);
        if (left <= 0) return;
        going += this.#value(
          next,
          left,
          move.to,
          outcomes + (this.#space.strides[step] as number) * (i + 1),
          depth + 1,
        );
      });
      this.#done[step] = 0;
      value = clearlyLess(stopping, going) ? stopping : going;
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

/** p/c along one line (see `RatioLine`): for problems whose states are too many to remember. */
export class LineBase implements Base {
  readonly #bench: Bench;
  readonly #chooser: RatioChooser;
  readonly #sight: Sight;
  readonly #line: RatioLine;
  readonly #effort: Effort;

  constructor(bench: Bench, effort: Effort) {
    this.#bench = bench;
    this.#line = new RatioLine(bench);
    this.#chooser = new RatioChooser(bench);
    this.#sight = new Sight(bench);
    this.#effort = effort;
  }

  value(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    const value = this.#line.value(belief, mass, done, arrangement);
    this.#effort.spend(4 * this.#bench.faultCount + this.#line.length * this.#bench.stepCount);
    return value;
  }

  first(belief: Belief, mass: number, done: Uint8Array, arrangement: number): number {
    return this.#chooser.first(arrangement, this.#sight.of(this.#bench, belief), mass, done);
  }
}
