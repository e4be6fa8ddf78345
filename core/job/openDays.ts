import type { EpochMs } from '../time.ts';
import type { ShopSettings } from './shop.ts';
import { fromWall } from './wallTime.ts';

/** The days from today on that the shop is open, with first opening and last closing. Today is there even when closed. */
export function openDays(
  settings: Pick<ShopSettings, 'open' | 'zone'>,
  now: EpochMs,
  count: number,
): readonly { readonly opens: EpochMs; readonly closes: EpochMs }[] {
  const day = new Intl.DateTimeFormat('en-CA', {
    timeZone: settings.zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const days: { opens: EpochMs; closes: EpochMs }[] = [];
  for (let ahead = 0; ahead < 21 && days.length < count; ahead += 1) {
    const date = day.format(now + ahead * 86_400_000);
    const weekday = new Date(`${date}T12:00:00Z`).getUTCDay();
    const hours = settings.open.filter((one) => one.weekday === weekday);
    if (hours.length === 0 && ahead > 0) continue;
    const from = hours.map((one) => one.from).sort()[0] ?? '09:00';
    const to =
      hours
        .map((one) => one.to)
        .sort()
        .at(-1) ?? '18:00';
    days.push({ opens: fromWall(`${date}T${from}`, settings.zone), closes: fromWall(`${date}T${to}`, settings.zone) });
  }
  return days;
}
