import { dayOf, daysAfter, fromWall, weekdayOf } from '../../calendar.ts';
import type { EpochMs } from '../../time.ts';
import type { OpenFrom, ShopSettings } from '../shop.ts';

type Opening = Pick<ShopSettings, 'open' | 'zone' | 'promises'>;

/** A day of the shop's own calendar. */
export type CalendarDay = {
  readonly weekday: number;
  /** A day on which the shop is shut whatever the weekday. */
  readonly closed: boolean;
  /** The moment at which the shop's clock shows `HH:MM` on that day. */
  readonly at: (time: string) => EpochMs;
};

/** Days from today on, local to the shop. */
export function* daysAhead({ zone, promises }: Opening, now: EpochMs, most: number): Generator<CalendarDay> {
  const today = dayOf(now, zone);
  for (let ahead = 0; ahead < most; ahead += 1) {
    const day = daysAfter(today, ahead);
    yield {
      weekday: weekdayOf(day),
      closed: promises?.closed.includes(day) ?? false,
      at: (time) => fromWall(`${day}T${time}`, zone),
    };
  }
}

/** When the shop opens first and closes last on a day; null on a day on which it does not open. */
export function openingOf(open: readonly OpenFrom[], day: CalendarDay): { opens: EpochMs; closes: EpochMs } | null {
  const hours = day.closed ? [] : open.filter((one) => one.weekday === day.weekday);
  const from = hours.map((one) => one.from).sort()[0];
  const to = hours
    .map((one) => one.to)
    .sort()
    .at(-1);
  return from === undefined || to === undefined ? null : { opens: day.at(from), closes: day.at(to) };
}

/** Opening hours of one day. */
export type OpenHours = { readonly opens: EpochMs; readonly closes: EpochMs };

/** The days from today on that the shop is open, with first opening and last closing; today only when it is one. */
export function openDays(settings: Opening, now: EpochMs, count: number): readonly OpenHours[] {
  const days: OpenHours[] = [];
  for (const day of daysAhead(settings, now, FARTHEST)) {
    const opening = openingOf(settings.open, day);
    if (opening) days.push(opening);
    if (days.length === count) break;
  }
  return days;
}

/** Today, open or not, and the open days after it: what a line of days is drawn from. A closed today has hours to be drawn with. */
export function todayAndOpenDays(
  settings: Opening,
  now: EpochMs,
  count: number,
): readonly (OpenHours & { readonly closed: boolean })[] {
  const [today] = daysAhead(settings, now, 1);
  const open = openDays(settings, now, count).map((day) => ({ ...day, closed: false }));
  if (!today || openingOf(settings.open, today)) return open;
  return [{ opens: today.at('09:00'), closes: today.at('18:00'), closed: true }, ...open].slice(0, count);
}

/** Days ahead among which open ones are looked for. */
const FARTHEST = 21;
