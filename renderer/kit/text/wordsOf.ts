import { dayOf, daysBetween, yearOf } from '../../../core/calendar.ts';
import type { Money } from '../../../core/money/money.ts';
import { type Facts, fillerOf } from '../../../core/text/fillGaps.ts';
import type { WordGroup, WordKey } from '../../catalogue.ts';

export type Catalogue = { readonly [key: string]: string | Catalogue };

export type WordsSetting = {
  /** Texts by dotted key: `{ kit: {…}, bench: {…} }` gives `kit.…` and `bench.…`. */
  readonly catalogue: Catalogue;
  /** BCP 47, of the shop: `en-GB`. */
  readonly locale: string;
  /** IANA zone of the shop: `Europe/London`. */
  readonly zone: string;
  /** Minor digits of a currency by ISO 4217's own list; two when left out, as most have. */
  readonly currencyDigits?: (currency: string) => number;
  /** What time it is, epoch milliseconds: a day of this week is said by its name, another by its date. */
  readonly now: () => number;
};

/** Texts, times, amounts and numbers as this shop reads them. */
export type Words = {
  readonly locale: string;
  readonly zone: string;
  /** A key that no text has does not compile; one that is built does where every text it can come to is there. */
  t(key: WordKey, facts?: Facts): string;
  /** The text of an id that comes from outside the house, as from a shop's own model; the id itself where a group has none. */
  named(group: WordGroup, id: string): string;
  number(value: number, digits?: number): string;
  money(amount: Money): string;
  /** An amount with no minor part when it is whole: for rulers and headings. */
  moneyShort(amount: Money): string;
  /** `35 min`, `1 h 12`. */
  minutes(value: number): string;
  /** `10:41` in the shop's zone. */
  clock(at: number): string;
  /** `Thu 26`. */
  day(at: number): string;
  /** `Tuesday`; 0 is Sunday. */
  weekday(day: number): string;
  /** `26 Nov`. */
  dayMonth(at: number): string;
  /** `Wednesday 25 November`. */
  date(at: number): string;
  /** `25 November 2026`: where a wrong year has to be seen. */
  dateYear(at: number): string;
  /** `25 November 2026 at 16:00`. */
  moment(at: number): string;
  /** `Thu 16:00` within six days of now, else with its date, `26 Nov 16:00`, and with its year where that is another one. */
  dayClock(at: number): string;
  /** `0:48` from seconds. */
  timer(seconds: number): string;
  /** `5 in 10`, `3 in 100`: odds are said, never given in per cent. */
  odds(chance: number): string;
  /** `A2, B1 and B2`. */
  list(items: readonly string[]): string;
};

/** Days around now in which the name of a weekday means one day alone. */
const NAMED_BY_WEEKDAY = 6;

/** Builds the words of one language and place. A key without words shows itself, so that it is seen and mended. */
export function wordsOf(setting: WordsSetting): Words {
  const { locale, zone, catalogue } = setting;
  const digitsOf = setting.currencyDigits ?? (() => 2);
  const plain = new Intl.NumberFormat(locale);
  const fill = fillerOf({ locale, number: plain, lacking: () => '?' });
  const format = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat(locale, { timeZone: zone, ...options });
  const clock = format({ hour: 'numeric', minute: '2-digit', hourCycle: 'h23' });
  const day = format({ weekday: 'short', day: 'numeric' });
  const dayMonth = format({ day: 'numeric', month: 'short' });
  const dayMonthYear = format({ day: 'numeric', month: 'short', year: 'numeric' });
  const weekday = format({ weekday: 'short' });
  const date = format({ weekday: 'long', day: 'numeric', month: 'long' });
  const dateYear = format({ dateStyle: 'long' });
  const moment = format({ dateStyle: 'long', timeStyle: 'short' });
  const dayName = format({ weekday: 'long', timeZone: 'UTC' });
  const list = new Intl.ListFormat(locale, { type: 'conjunction' });

  const whichDay = (at: number): string => {
    const now = setting.now();
    if (Math.abs(daysBetween(dayOf(now, zone), dayOf(at, zone))) <= NAMED_BY_WEEKDAY) return weekday.format(at);
    return (yearOf(at, zone) === yearOf(now, zone) ? dayMonth : dayMonthYear).format(at);
  };

  const textAt = (key: string): string | undefined => {
    let here: string | Catalogue | undefined = catalogue;
    for (const step of key.split('.')) {
      if (here === undefined || typeof here === 'string') return undefined;
      here = here[step];
    }
    return typeof here === 'string' ? here : undefined;
  };
  const t = (key: WordKey, facts: Facts = {}): string => {
    const text = textAt(key);
    return text === undefined ? key : fill(text, facts);
  };
  const money = (amount: Money, least?: number) => {
    const digits = digitsOf(amount.currency);
    const whole = amount.minor / 10 ** digits;
    return new Intl.NumberFormat(locale, {
      style: 'currency',
      currency: amount.currency,
      minimumFractionDigits: least === 0 && Number.isInteger(whole) ? 0 : digits,
      maximumFractionDigits: digits,
    }).format(whole);
  };

  return {
    locale,
    zone,
    t,
    named: (group, id) => textAt(`${group}.${id}`) ?? id,
    number: (value, digits) =>
      digits === undefined
        ? plain.format(value)
        : new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value),
    money: (amount) => money(amount),
    moneyShort: (amount) => money(amount, 0),
    minutes: (value) => {
      const whole = Math.round(value);
      if (whole < 60) return t('kit.minutes.short', { n: whole });
      return t('kit.minutes.long', { h: Math.floor(whole / 60), m: String(whole % 60).padStart(2, '0') });
    },
    clock: (at) => clock.format(at),
    day: (at) => day.format(at),
    // The first Sunday of 2023 is its first day.
    weekday: (of) => dayName.format(Date.UTC(2023, 0, 1 + of)),
    dayMonth: (at) => dayMonth.format(at),
    date: (at) => date.format(at),
    dateYear: (at) => dateYear.format(at),
    moment: (at) => moment.format(at),
    dayClock: (at) => `${whichDay(at)} ${clock.format(at)}`,
    timer: (seconds) => {
      const whole = Math.max(0, Math.floor(seconds));
      const h = Math.floor(whole / 3600);
      const m = Math.floor((whole % 3600) / 60);
      const s = String(whole % 60).padStart(2, '0');
      return h > 0 ? `${h}:${String(m).padStart(2, '0')}:${s}` : `${m}:${s}`;
    },
    odds: (chance) => {
      if (chance < 0.01) return t('kit.odds.under');
      if (chance > 0.99) return t('kit.odds.over');
      if (chance < 0.095 || chance > 0.905) return t('kit.odds.in-100', { n: Math.round(chance * 100) });
      return t('kit.odds.in-10', { n: Math.round(chance * 10) });
    },
    list: (items) => list.format(items),
  };
}
