import type { EpochMs } from '../../time.ts';
import type { Forecast } from './queue.ts';

/** An open day of the shop, when it can be fetched. */
export type OpenDay = { readonly opens: EpochMs; readonly closes: EpochMs };

/**
 * The end of the open day by which it is ready with chance `percentile` (0..1): the day to promise. Null when so many
 * runs end past what the calendar or the days reach. `days` in order.
 */
export function dayFor({ done, runs }: Forecast, percentile: number, days: readonly OpenDay[]): EpochMs | null {
  // Type 1 of Hyndman and Fan (1996): no figure between two runs, since nothing happens there.
  const end = done[Math.max(0, Math.ceil(percentile * runs) - 1)];
  if (end === undefined) return null;
  return days.find((day) => day.closes >= end)?.closes ?? null;
}

/** Chance that it is not done by then, 0..1. */
export function lateChance({ done, runs }: Forecast, by: EpochMs): number {
  return runs === 0 ? 0 : 1 - done.filter((end) => end <= by).length / runs;
}
