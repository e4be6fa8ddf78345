import { lowerGamma } from '../../../../core/figures/specialFunctions.ts';

/** How often a truth fell into each of some bins, and how likely chance alone strays so far from the shares they should have. */
export type RankTest = { readonly counts: readonly number[]; readonly p: number };

/** Pearson's χ² of counts against the shares expected (Abramowitz & Stegun 26.4.19 for its upper tail). */
export function rankTest(counts: readonly number[], shares: readonly number[]): RankTest {
  const all = counts.reduce((sum, one) => sum + one, 0);
  const apart = counts.reduce((sum, count, bin) => {
    const expected = all * (shares[bin] as number);
    return sum + (count - expected) ** 2 / expected;
  }, 0);
  return { counts, p: 1 - lowerGamma((counts.length - 1) / 2, apart / 2) };
}

/** Seeds that the whole check is made with, and the chance of a false alarm over all of them. */
export const SEEDS = 20;
export const FALSE_ALARM = 0.001;
