import type { Bench } from './bench.ts';

/**
 * Minutes of following one order of steps to its end and handing over there, per fault: linear in the belief, so that
 * one table answers for every belief met at the same stand.
 */
export class FixedOrder {
  readonly #bench: Bench;
  readonly #prices: Float64Array;
  readonly #steps: Int32Array;

  constructor(bench: Bench) {
    this.#bench = bench;
    this.#prices = new Float64Array(bench.stepCount);
    this.#steps = new Int32Array(bench.stepCount);
  }

  /** Fills `into` over the faults, in the amortised count of `Move.price`; steps that are done are left out. */
  minutesOf(order: Int32Array, done: Uint8Array, arrangement: number, into: Float64Array): void {
    const { arrangements, minutes, stayRow, costRow, problem } = this.#bench;
    let at = arrangement;
    let length = 0;
    for (let i = 0; i < order.length; i++) {
      const s = order[i] as number;
      if (done[s] === 1) continue;
      const move = arrangements.move(at, s);
      this.#prices[length] = move.price + (minutes[s] as number);
      this.#steps[length++] = s;
      at = move.to;
    }
    into.fill(problem.handOver);
    for (let i = length - 1; i >= 0; i--) {
      const s = this.#steps[i] as number;
      const price = this.#prices[i] as number;
      const stay = stayRow[s] as Float64Array;
      const cost = costRow[s];
      if (cost)
        for (let f = 0; f < into.length; f++)
          into[f] = price + (cost[f] as number) + (stay[f] as number) * (into[f] as number);
      else for (let f = 0; f < into.length; f++) into[f] = price + (stay[f] as number) * (into[f] as number);
    }
  }
}

/** Σ belief × minutes. */
export function weighed(belief: Float64Array, minutes: Float64Array): number {
  let sum = 0;
  for (let f = 0; f < belief.length; f++) sum += (belief[f] as number) * (minutes[f] as number);
  return sum;
}
