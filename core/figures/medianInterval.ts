import { CONFIDENCE, type Interval } from './interval.ts';
import { nth } from './rows.ts';
import { incompleteBeta } from './specialFunctions.ts';

/**
 * Where the median lies, between two of the sorted data, whatever they are distributed like (order statistics;
 * Conover, Practical Nonparametric Statistics, section 3.2). Covers at least what is asked.
 * @returns `null` where so few data allow none: below six at 0.95.
 */
export function medianInterval(data: readonly number[], confidence: number = CONFIDENCE): Interval | null {
  const rank = lowRank(data.length, confidence);
  if (rank === null) return null;
  const sorted = data.toSorted((a, b) => a - b);
  return { low: nth(sorted, rank - 1), high: nth(sorted, data.length - rank) };
}

/** The largest rank so far from the middle that no more than half the doubt lies outside it; ranks count from 1. */
function lowRank(n: number, confidence: number): number | null {
  const tail = (1 - confidence) / 2;
  let rank: number | null = null;
  for (let next = 1; next <= n / 2 && incompleteBeta(0.5, n - next + 1, next) <= tail; next += 1) rank = next;
  return rank;
}
