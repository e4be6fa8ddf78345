import { at, nth, wholeAt } from '../../../figures/rows.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';

/**
 * Minutes of following one order of steps to its end and handing over there, per fault: linear in the belief, so that
 * one table answers for every belief met at the same state.
 */
export class FixedOrder {
  readonly #compiled: CompiledProblem;
  readonly #prices: Float64Array;
  readonly #steps: Int32Array;

  constructor(compiled: CompiledProblem) {
    this.#compiled = compiled;
    this.#prices = new Float64Array(compiled.stepCount);
    this.#steps = new Int32Array(compiled.stepCount);
  }

  /** Fills `into` over the faults, in the amortised count of `Move.price`; steps that are done are left out. */
  minutesOf(order: Int32Array, done: Uint8Array, from: number, into: Float64Array): void {
    const { stayRow, costRow, problem } = this.#compiled;
    const length = this.#price(order, done, from);
    into.fill(problem.handOver);
    for (let i = length - 1; i >= 0; i--) {
      const s = wholeAt(this.#steps, i);
      const price = at(this.#prices, i);
      const stay = nth(stayRow, s);
      const cost = costRow[s];
      if (cost) for (let f = 0; f < into.length; f++) into[f] = price + at(cost, f) + at(stay, f) * at(into, f);
      else for (let f = 0; f < into.length; f++) into[f] = price + at(stay, f) * at(into, f);
    }
  }

  /** Minutes of each step left with its opening and closing, whatever the fault; answers how many steps there are. */
  #price(order: Int32Array, done: Uint8Array, from: number): number {
    const { arrangements, minutes } = this.#compiled;
    let arrangement = from;
    let length = 0;
    for (const s of order) {
      if (done[s] === 1) continue;
      const move = arrangements.move(arrangement, s);
      this.#prices[length] = move.price + at(minutes, s);
      this.#steps[length++] = s;
      arrangement = move.to;
    }
    return length;
  }
}
