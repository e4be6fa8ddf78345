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

function flow(stretches: readonly Stretch[], rateOf: (stretch: Stretch) => number) {
  const worked = stretches.filter((one) => one.to > one.from && rateOf(one) > 0);
  const rates = worked.map(rateOf);
  const before: number[] = [];
  let done = 0;
  worked.forEach(({ from, to }, i) => {
    before.push(done);
    done += ((to - from) / MINUTE_MS) * (rates[i] as number);
  });
  /** Minutes of work done in all up to a moment. */
  const upTo = (at: number): number => {
    const i = lastWhere(worked.length, (k) => (worked[k]?.from as number) <= at);
    const stretch = worked[i];
    if (!stretch) return 0;
    return (before[i] as number) + ((Math.min(at, stretch.to) - stretch.from) / MINUTE_MS) * (rates[i] as number);
  };
  return (from: EpochMs, minutes: number): EpochMs | null => {
    if (minutes <= 0) return from;
    const wanted = upTo(from) + minutes;
    if (wanted > done) return null;
    const i = lastWhere(worked.length, (k) => (before[k] as number) < wanted);
    const stretch = worked[i];
    if (!stretch) return null;
    const at = stretch.from + ((wanted - (before[i] as number)) / (rates[i] as number)) * MINUTE_MS;
    return epochMs(Math.max(from, Math.round(Math.min(at, stretch.to))));
  };
}

/** The last of `count` places that holds, where those that hold come first; -1 when none does. */
function lastWhere(count: number, holds: (at: number) => boolean): number {
  let low = -1;
  let high = count;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
