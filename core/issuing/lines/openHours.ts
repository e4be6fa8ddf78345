import { DAY_MS } from '../../time.ts';
import type { Making } from '../making.ts';

/** When the shop is open, one line for each run of days with the same hours: `Tuesday to Friday 09:00 to 13:00 and …`. */
export function openHours({ settings, words, format, setting }: Making): readonly string[] {
  const { facts } = words;
  const first = firstDayOfWeek(setting.locale);
  const week = Array.from({ length: 7 }, (_, day) => (first + day) % 7);
  const runs: { readonly hours: string; readonly days: number[] }[] = [];
  for (const weekday of week) {
    const hours = format.list(
      settings.open
        .filter((one) => one.weekday === weekday)
        .map(({ from, to }) => format.say(facts.openHours, { from, to })),
    );
    const last = runs.at(-1);
    if (last?.hours === hours) last.days.push(weekday);
    else runs.push({ hours, days: [weekday] });
  }
  return runs
    .filter((run) => run.hours !== '')
    .map(({ hours, days }) => {
      const [from, to] = [days[0], days.at(-1)].map((day) => dayName(day ?? 0, setting.locale));
      const named = days.length === 1 ? from : format.say(facts.openDays, { first: from ?? '', last: to ?? '' });
      return format.say(facts.open, { days: named ?? '', hours });
    });
}

/** 4 January 1970 was a Sunday: names of weekdays without a calendar of our own. */
const dayName = (weekday: number, locale: string): string =>
  new Intl.DateTimeFormat(locale, { weekday: 'long', timeZone: 'UTC' }).format((3 + weekday) * DAY_MS);

/** 0 for Sunday. Where the platform does not say, Monday. */
function firstDayOfWeek(locale: string): number {
  return (new Intl.Locale(locale).getWeekInfo?.().firstDay ?? 1) % 7;
}

declare global {
  namespace Intl {
    interface Locale {
      /** ECMA-402, Intl Locale Info: 1 for Monday to 7 for Sunday. Not on every platform yet. */
      getWeekInfo?(): { readonly firstDay: number };
    }
  }
}
