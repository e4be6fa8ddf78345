import { nth } from '../../figures/rows.ts';
import { type EpochMs, epochMs, MINUTE_MS } from '../../time.ts';

/** A stretch of time in which so many pairs of hands are at work. Stretches follow each other and do not overlap. */
export type Stretch = { readonly from: EpochMs; readonly to: EpochMs; readonly hands: number };

/** When work gets done, by all hands together and by the one pair that a job has. */
export type WorkCalendar = {
  /** When so many hands-on minutes from `from` on are done by all hands; null past the last stretch. */
  readonly byAll: (from: EpochMs, minutes: number) => EpochMs | null;
  /** The same by one pair of hands: a second pair does not make one machine go faster. */
  readonly byOne: (from: EpochMs, minutes: number) => EpochMs | null;
};

/**
 * A calendar of those stretches. Work is taken to flow: whoever is at work takes the next machine, so that more work
 * ahead never makes anything earlier (by named hands it could: the next free pair may be one that goes home sooner).
 */
export const workCalendar = (stretches: readonly Stretch[]): WorkCalendar => ({
  byAll: flow(stretches, ({ hands }) => hands),
  byOne: flow(stretches, ({ hands }) => Math.min(1, hands)),
});

/** A stretch in which work is done: pairs of hands at it, and minutes of work done before it. */
type Worked = { readonly from: EpochMs; readonly to: EpochMs; readonly rate: number; readonly before: number };

function flow(stretches: readonly Stretch[], rateOf: (stretch: Stretch) => number) {
  const worked: Worked[] = [];
  let done = 0;
  for (const { from, to, ...stretch } of stretches) {
    const rate = rateOf({ from, to, ...stretch });
    if (to <= from || rate <= 0) continue;
    worked.push({ from, to, rate, before: done });
    done += ((to - from) / MINUTE_MS) * rate;
  }
  /** Minutes of work done in all up to a moment. */
  const upTo = (at: number): number => {
    const stretch = lastWhere(worked, ({ from }) => from <= at);
    return stretch ? stretch.before + ((Math.min(at, stretch.to) - stretch.from) / MINUTE_MS) * stretch.rate : 0;
  };
  return (from: EpochMs, minutes: number): EpochMs | null => {
    if (minutes <= 0) return from;
    const wanted = upTo(from) + minutes;
    if (wanted > done) return null;
    const stretch = lastWhere(worked, ({ before }) => before < wanted);
    if (!stretch) return null;
    const at = stretch.from + ((wanted - stretch.before) / stretch.rate) * MINUTE_MS;
    return epochMs(Math.max(from, Math.round(Math.min(at, stretch.to))));
  };
}

/** The last of a list that holds, where those that hold come first; undefined when none does. */
function lastWhere<T>(list: readonly T[], holds: (one: T) => boolean): T | undefined {
  let low = -1;
  let high = list.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(nth(list, middle))) low = middle;
    else high = middle;
  }
  return list[low];
}
