import type { Belief, Bench } from './bench.ts';
import { MOST_CANDIDATES } from './lookAhead.ts';
import { Sight } from './sight.ts';

/** The steps worth looking into once an outcome is known: half the best by what was seen before it, half the best by p/c now. */
export class Shortlist {
  readonly #bench: Bench;
  readonly #sight: Sight;

  constructor(bench: Bench) {
    this.#bench = bench;
    this.#sight = new Sight(bench, bench.aimedBy);
  }

  /** `ranked`: all steps, the best first, as they were seen before the outcome. */
  of(
    ranked: readonly number[],
    belief: Belief,
    mass: number,
    done: Uint8Array,
    arrangement: number,
    most = MOST_CANDIDATES,
  ): readonly number[] {
    const left = ranked.filter((s) => done[s] === 0);
    if (left.length <= most) return left;
    const short = left.slice(0, most / 2);
    const { cure, harm } = this.#sight.of(this.#bench, belief);
    for (const s of short) cure[s] = 0;
    while (short.length < most) {
      let best = -1;
      let ratio = 0;
      for (const s of left) {
        const chance = cure[s] as number;
        if (chance <= 0) continue;
        const minutes = (this.#bench.minutes[s] as number) + this.#bench.arrangements.move(arrangement, s).price;
        const own = chance / (mass * minutes + (harm[s] as number));
        if (own < ratio || (own === ratio && s > best)) continue;
        best = s;
        ratio = own;
      }
      if (best < 0) break;
      cure[best] = 0;
      short.push(best);
    }
    return short;
  }
}
