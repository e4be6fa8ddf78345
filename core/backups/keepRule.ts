import { type CalendarDate, dayOf, daysAfter, weekdayOf } from '../calendar.ts';
import type { EpochMs } from '../time.ts';

/** How many backups stay: the last of each of so many days, weeks (from Monday) and months. */
export type KeepRule = { readonly days: number; readonly weeks: number; readonly months: number };

/** Common practice, no source: every day of a week, every week of a month and a half, every month of a year. */
export const USUAL_RULE: KeepRule = { days: 7, weeks: 6, months: 12 };

/** A backup as the rule looks at it. `proved`: it was tried out, and was whole, was not, or has not been tried yet. */
export type Keepable = { readonly at: EpochMs; readonly proved: 'whole' | 'broken' | 'not-yet' };

/**
 * Which backups stay. One that is broken stands for no day; the newest of all stays, and so does the newest that was
 * proved whole.
 * @param zone The shop's zone: its days are meant.
 */
export function whichToKeep<One extends Keepable>(
  backups: readonly One[],
  rule: KeepRule,
  zone: string,
): ReadonlySet<One> {
  const newestFirst = backups.toSorted((a, b) => b.at - a.at);
  const usable = newestFirst.filter(({ proved }) => proved !== 'broken');
  const newest = newestFirst.slice(0, 1);
  const proved = newestFirst.filter((one) => one.proved === 'whole').slice(0, 1);
  const day = ({ at }: One) => dayOf(at, zone);
  return new Set([
    ...newest,
    ...proved,
    ...lastOfEach(usable, day, rule.days),
    ...lastOfEach(usable, (one) => mondayOf(day(one)), rule.weeks),
    ...lastOfEach(usable, (one) => day(one).slice(0, 'YYYY-MM'.length), rule.months),
  ]);
}

const mondayOf = (day: CalendarDate): CalendarDate => daysAfter(day, -((weekdayOf(day) + 6) % 7));

/** The newest of each period, of the newest so many periods that have one. */
function lastOfEach<One>(newestFirst: readonly One[], periodOf: (one: One) => string, most: number): readonly One[] {
  const found = new Map<string, One>();
  for (const one of newestFirst) {
    const period = periodOf(one);
    if (!found.has(period) && found.size < most) found.set(period, one);
  }
  return [...found.values()];
}
