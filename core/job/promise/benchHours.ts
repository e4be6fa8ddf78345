import type { Stretch } from '../../labour/promise/calendar.ts';
import type { OpenDay } from '../../labour/promise/day.ts';
import type { EpochMs } from '../../time.ts';
import type { Shop, ShopSettings, Staff } from '../shop.ts';
import { type CalendarDay, daysAhead, openingOf } from './openDays.ts';

/** So far ahead a promise is worked out; what ends later has no day yet. */
const DAYS_AHEAD = 60;

export type BenchHours = {
  /** When hands are at the benches, from now on. */
  readonly stretches: readonly Stretch[];
  /** When the machine can be fetched: the shop's open days, from now on. */
  readonly days: readonly OpenDay[];
};

/**
 * When the shop's technicians are at their benches, and on which days it is open: everybody's own hours, or the opening
 * hours where none are set; nobody on closing days; never more pairs of hands than benches.
 */
export function benchHours(settings: ShopSettings, staff: readonly Staff[], now: EpochMs): BenchHours {
  const technicians = staff.filter(({ roles }) => roles.includes('bench'));
  const stretches: Stretch[] = [];
  const days: OpenDay[] = [];
  for (const day of daysAhead(settings, now, DAYS_AHEAD)) {
    const opening = openingOf(settings.open, day);
    if (opening && opening.closes > now) days.push(opening);
    if (!day.closed) stretches.push(...stretchesOf(settings, technicians, day, now));
  }
  return { stretches, days };
}

function stretchesOf(
  settings: ShopSettings,
  technicians: readonly Staff[],
  day: CalendarDay,
  now: EpochMs,
): readonly Stretch[] {
  const at = technicians.flatMap(({ hours }) =>
    (hours ?? settings.open)
      .filter(({ weekday }) => weekday === day.weekday)
      .map(({ from, to }) => ({ from: day.at(from), to: day.at(to) })),
  );
  const edges = [...new Set(at.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  return edges.flatMap((from, i) => {
    const to = edges[i + 1];
    const hands = Math.min(settings.benches.length, at.filter((one) => one.from <= from && from < one.to).length);
    return to === undefined || to <= now || hands === 0
      ? []
      : [{ from: from < now ? now : from, to, hands } satisfies Stretch];
  });
}

/** Is the shop open on the day of that moment, by its own calendar? */
export const opensOn = ({ settings }: Shop, at: EpochMs): boolean => {
  if (!settings) return true;
  const [day] = daysAhead(settings, at, 1);
  return day !== undefined && openingOf(settings.open, day) !== null;
};
