import { type EpochMs, epochMs } from '../../time.ts';
import type { OpenFrom, ShopSettings } from '../shop.ts';
import { fromWall } from './wallTime.ts';

type Opening = Pick<ShopSettings, 'open' | 'zone' | 'promises'>;

/** A day of the shop's own calendar; its clock is taken as it stands at noon. */
export type CalendarDay = {
  readonly weekday: number;
  /** A day on which the shop is shut whatever the weekday. */
  readonly closed: boolean;
  readonly at: (time: string) => EpochMs;
};

/** Days from today on, local to the shop. */
export function* daysAhead(settings: Opening, now: EpochMs, most: number): Generator<CalendarDay> {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone: settings.zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const today = Date.parse(`${format.format(now)}T12:00:00Z`);
  for (let ahead = 0; ahead < most; ahead += 1) {
    const utcNoon = new Date(today + ahead * 86_400_000);
    const date = utcNoon.toISOString().slice(0, 10);
    const noon = fromWall(`${date}T12:00`, settings.zone);
    yield {
      weekday: utcNoon.getUTCDay(),
      closed: settings.promises?.closed.includes(date) ?? false,
      at: (time) => {
        const [hours, minutes] = time.split(':').map(Number) as [number, number];
        return epochMs(noon + (hours * 60 + minutes - 720) * 60_000);
      },
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
