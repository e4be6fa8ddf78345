import { DAY_MS, HOUR_MS } from '../../../core/time.ts';
import type { LineTick } from '../plot/RuleLine.tsx';
import { foldedScale, type Span } from '../plot/scale.ts';

/** The first opening and the last closing of one day, ms. */
export type DayOpening = {
  readonly opens: number;
  readonly closes: number;
  /** Not open that day after all: today, drawn all the same. */
  readonly closed?: boolean;
};
export type DayScale = {
  readonly at: (when: number) => number;
  /** px where each day begins and ends. */
  readonly days: readonly { readonly from: number; readonly to: number; readonly opens: number }[];
  /** One for each night folded away: three for a weekend. */
  readonly joints: readonly number[];
  readonly ticks: readonly LineTick[];
};

const JOINT = 20;
const MORE_NIGHTS = 12.5;
/** Today takes most of the line; each later day less. */
const SHARES = [1, 0.44, 0.32, 0.22, 0.17, 0.165, 0.15, 0.15] as const;

/**
 * Today to next week on one line: open hours to scale, nights folded away.
 * @param from @param to px the whole takes. @param hour how a full hour is written.
 */
export function dayScale(
  days: readonly DayOpening[],
  from: number,
  to: number,
  hour: (at: number) => string,
): DayScale {
  const nights = days.slice(1).map((day, i) => Math.max(1, Math.round((day.opens - (days[i]?.opens ?? 0)) / DAY_MS)));
  const gaps = nights.map((n) => JOINT + (n - 1) * MORE_NIGHTS);
  const room = to - from - gaps.reduce((sum, gap) => sum + gap, 0);
  const shares = days.map((_, i) => SHARES[i] ?? 0.14);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const spans: Span[] = days.map((day, i) => ({
    from: day.opens,
    to: day.closes,
    length: (room * (shares[i] ?? 0)) / whole,
  }));
  let x = from;
  const placed = spans.map((span, i) => {
    const start = x;
    x += span.length + (gaps[i] ?? 0);
    return { from: start, to: start + span.length, opens: span.from };
  });
  const scale = foldedScale(spans, 0);
  const shift = (when: number) => {
    for (const [i, day] of days.entries()) {
      const box = placed[i];
      if (!box) break;
      if (when < day.opens) return i === 0 ? from : (box.from + (placed[i - 1]?.to ?? box.from)) / 2;
      if (when <= day.closes) return box.from + scale.at(when) - scale.at(day.opens);
    }
    return to;
  };
  return {
    at: shift,
    days: placed,
    joints: nights.flatMap((n, i) => {
      const middle = ((placed[i]?.to ?? 0) + (placed[i + 1]?.from ?? 0)) / 2;
      return Array.from({ length: n }, (_, k) => middle + (k - (n - 1) / 2) * MORE_NIGHTS);
    }),
    ticks: days.flatMap((day, i) => dayTicks(day, placed[i]?.from ?? 0, placed[i]?.to ?? 0, i === 0, hour)),
  };
}

function dayTicks(
  day: DayOpening,
  from: number,
  to: number,
  today: boolean,
  hour: (at: number) => string,
): readonly LineTick[] {
  const width = to - from;
  const perHour = (width * HOUR_MS) / (day.closes - day.opens);
  const ticks: LineTick[] = [];
  const unit = today && perHour > 36 ? HOUR_MS / 2 : HOUR_MS;
  for (let at = Math.ceil(day.opens / unit) * unit; at <= day.closes; at += unit) {
    const x = from + ((at - day.opens) / (day.closes - day.opens)) * width;
    const full = Math.round((at - day.opens) / HOUR_MS);
    const end = at === day.opens || at >= day.closes - unit / 2;
    const long = end || (at % HOUR_MS === 0 && full % 3 === 0);
    if (!long && perHour < 9) continue;
    const labelled = long && at % HOUR_MS === 0 && (today || (!end && width > 110));
    ticks.push({
      at: x,
      size: long ? 'long' : at % HOUR_MS === 0 && today ? 'middle' : 'short',
      ...(labelled
        ? {
            label: hour(at),
            anchor: at === day.opens ? ('start' as const) : end ? ('end' as const) : ('middle' as const),
          }
        : {}),
    });
  }
  return ticks;
}
