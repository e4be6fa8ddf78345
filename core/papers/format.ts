import { type CalendarDate, dayOf, daysAfter, monthsAfter } from '../calendar.ts';
import { formatMoney } from '../money/formatMoney.ts';
import type { Money } from '../money/money.ts';
import { fillerOf } from '../text/fillGaps.ts';
import type { EpochMs, Minutes } from '../time.ts';
import type { Setting } from './setting.ts';

/** Stands on a paper that is shown before it is issued where number, clock and sealed head will be. */
export const NOT_YET = '…';

/** Writes plain facts the way the owner's country writes them, in the shop's zone. */
export type Format = ReturnType<typeof formatFor>;

/**
 * The writer of plain facts for a paper: dates in the shop's zone, amounts from minor units, minutes as hours and minutes,
 * numbers and lists, each as the locale has it.
 */
export function formatFor(setting: Setting) {
  const { locale, zone, words, shownAt } = setting;
  const dated = (options: Intl.DateTimeFormatOptions) => {
    const writer = new Intl.DateTimeFormat(locale, { ...options, timeZone: zone });
    // The day of the month stays with its month.
    return (at: EpochMs) => writer.format(at).replace(/(\d) (?=\p{L})/u, '$1\u00a0');
  };
  const date = dated({ day: 'numeric', month: 'long', year: 'numeric' });
  const day = dated({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
  const shortDay = dated({ weekday: 'short', day: 'numeric', month: 'short' });
  const clock = dated({ hour: 'numeric', minute: '2-digit' });
  const time = (at: EpochMs) => (at === shownAt ? NOT_YET : clock(at));
  const withTime = (at: EpochMs, said: string) =>
    at === shownAt ? said : say(words.common.dayTime, { day: said, time: time(at) });
  const inUtc = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
  const written = (day: CalendarDate) => inUtc.format(Date.parse(`${day}T12:00Z`));
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 3 });
  const say = fillerOf({ locale });

  return {
    /** 13 October 2026 */
    date,
    /** Tuesday 13 October 2026 */
    day,
    /** Tue 13 Oct */
    shortDay,
    /** 09:47 */
    time,
    /** Tuesday 13 October 2026, 09:47 */
    dayTime: (at: EpochMs) => withTime(at, day(at)),
    /** Tue 13 Oct, 09:47 */
    shortDayTime: (at: EpochMs) => withTime(at, shortDay(at)),
    /** The date so many calendar days after the shop's date at `at`, whatever the clocks do in between. */
    datePlusDays: (at: EpochMs, days: number) => written(daysAfter(dayOf(at, zone), days)),
    /** The date so many months after the shop's date at `at`; the month's last day where it has no such day. */
    datePlusMonths: (at: EpochMs, months: number) => written(monthsAfter(dayOf(at, zone), months)),
    number: (value: number) => number.format(value),
    money: (amount: Money) => formatMoney(amount, locale),
    /** 48 minutes; 3 hours 12 minutes */
    minutes: (of: Minutes) => {
      const whole = Math.round(of);
      const hours = Math.floor(whole / 60);
      const rest = whole % 60;
      const asMinutes = say(words.common.minutes, { n: rest });
      if (hours === 0) return asMinutes;
      const asHours = say(words.common.hours, { n: hours });
      return rest === 0 ? asHours : say(words.common.both, { first: asHours, second: asMinutes });
    },
    /** 192 minutes, never in hours: what is charged by the minute is said in minutes. */
    minutesWhole: (of: Minutes) => say(words.common.minutes, { n: Math.round(of) }),
    list: (items: readonly string[]) => new Intl.ListFormat(locale, { type: 'conjunction' }).format(items),
    /** A chance as a count of a hundred; the ends are not claimed. */
    chance: (p: number) => {
      const of = Math.round(p * 100);
      if (of < 1) return words.common.chanceLow;
      if (of > 99) return words.common.chanceHigh;
      return say(words.common.chance, { n: of });
    },
    /** A text with its gaps filled; one that lacks a fact is a defect, and thrown: a paper never prints `{name}`. */
    say,
  };
}

/** A tag in the three groups in which it is read aloud: `K7R4TMX` is `K7R 4TM X`. */
export function groupTag(tag: string): string {
  const plain = tag.replace(/\s/g, '');
  return [plain.slice(0, 3), plain.slice(3, 6), plain.slice(6)].filter((group) => group !== '').join(' ');
}

/** A text that is not broken between lines: a telephone number. */
export const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');
