import { clopperPearson, garwood, type Interval } from './interval.ts';

/**
 * What a share or a count supports in plain words. `too-few-to-say`: the interval holds what all others show, or,
 * where there is nothing to hold it against, is too wide to be of use.
 */
export type FigureVerdict =
  | {
      readonly says: 'more-often' | 'less-often' | 'too-few-to-say';
      readonly interval: Interval;
      readonly others: number;
    }
  | { readonly says: 'about-so-often' | 'too-few-to-say'; readonly interval: Interval; readonly others: null }
  /** A bare count without the number exposed: what is common fails often, and says nothing of how well it is made. */
  | { readonly says: 'count-only'; readonly count: number };

/** The widest interval of a share that is still worth telling: a quarter. Our own choice, no source. */
export const WIDEST = 0.25;

/**
 * How a family's share (of its machines, of its starts) stands to the share among all others.
 * @param of The number exposed, `null` where nobody counted it.
 * @param others The share among all others, 0..1, or `null` when there is none to hold it against.
 */
export function shareVerdict(count: number, of: number | null, others: number | null): FigureVerdict {
  if (of === null || of === 0) return { says: 'count-only', count };
  const interval = clopperPearson(count, of);
  if (others === null) {
    return { says: interval.high - interval.low > WIDEST ? 'too-few-to-say' : 'about-so-often', interval, others };
  }
  return { says: against(interval, others), interval, others };
}

/**
 * How a family's failures in its exposure stand to the rate among all others, both in the same unit.
 * @param exposure Part-years, drive-days …; `null` where nobody knows them.
 */
export function rateVerdict(count: number, exposure: number | null, others: number): FigureVerdict {
  if (exposure === null || exposure === 0) return { says: 'count-only', count };
  const { low, high } = garwood(count);
  const interval = { low: low / exposure, high: high / exposure };
  return { says: against(interval, others), interval, others };
}

function against({ low, high }: Interval, others: number): 'more-often' | 'less-often' | 'too-few-to-say' {
  if (low > others) return 'more-often';
  return high < others ? 'less-often' : 'too-few-to-say';
}
