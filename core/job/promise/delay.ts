import { dayOf, daysBetween } from '../../calendar.ts';
import { DAY_MINUTES, type EpochMs, HOUR_MINUTES } from '../../time.ts';
import type { Job } from '../job.ts';
import type { ShopSettings } from '../shop.ts';

/** What a day more costs a job in bench minutes until the shop sets its own: common practice, no source. */
export const USUAL_DAY_MINUTES = 30;

/** What a day more costs a job, in minutes of the bench, as the shop set it or else by `USUAL_DAY_MINUTES`. */
export const dayMinutesOf = (settings: ShopSettings | null): number =>
  settings?.promises?.dayMinutes ?? USUAL_DAY_MINUTES;

/** Days of the calendar from today to the promised one, as the shop's own zone has them; null without a promise. */
export function daysUntilPromised(
  { promised }: Pick<Job, 'promised'>,
  { zone }: ShopSettings,
  now: EpochMs,
): number | null {
  return promised && daysBetween(dayOf(now, zone), dayOf(promised.at, zone));
}

/** Days that a wait of so many minutes takes, as they are said to the owner: at least one; an hour at the bench is none. */
export const daysOf = (waiting: number): number => Math.max(1, Math.ceil((waiting - HOUR_MINUTES) / DAY_MINUTES));
