import { DAY_MS, type EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import type { ShopSettings } from '../shop.ts';

/**
 * What storage comes to by now, in whole days. It runs from the day that the shop's rules name, counted from when the
 * owner was told that it is ready, and only after notice: never before the first reminder, whose paper says that day
 * and the price. Whether local law lets a shop ask it is for the shop to know.
 */
export function storageDue(
  job: Job,
  rules: ShopSettings['rules'],
  now: EpochMs,
): { readonly days: number; readonly minor: number } | null {
  const notice = job.reminders[0]?.at;
  if (job.toldReadyAt === null || notice === undefined || job.charging === 'free') return null;
  const from = Math.max(job.toldReadyAt + rules.storageFeeAfterDays * DAY_MS, notice);
  const days = Math.floor((now - from) / DAY_MS);
  return days > 0 && rules.storageFeeMinorPerDay > 0 ? { days, minor: days * rules.storageFeeMinorPerDay } : null;
}
