import { afterDays, wholeDaysBetween } from '../../calendar.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import type { ShopSettings } from '../shop.ts';

/**
 * What storage comes to by now, in whole days by the clock on the shop's wall. It runs from the day that the shop's rules name, counted from when the
 * owner was told that it is ready, and only after notice: never before the first reminder, whose paper says that day
 * and the price. Whether local law lets a shop ask it is for the shop to know.
 */
export function storageDue(
  job: Job,
  { rules, zone }: Pick<ShopSettings, 'rules' | 'zone'>,
  now: EpochMs,
): { readonly days: number; readonly minor: number } | null {
  const notice = job.reminders[0]?.at;
  if (job.toldReadyAt === null || notice === undefined || job.charging === 'free') return null;
  const from = Math.max(afterDays(job.toldReadyAt, rules.storageFeeAfterDays, zone), notice);
  const days = wholeDaysBetween(from, now, zone);
  return days > 0 && rules.storageFeeMinorPerDay > 0 ? { days, minor: days * rules.storageFeeMinorPerDay } : null;
}
