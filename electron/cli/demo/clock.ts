import { fromWall } from '../../../core/calendar.ts';
import { type EpochMs, epochMs, MINUTE_MS } from '../../../core/time.ts';

/** A wall clock that a story sets: `2026-10-13T09:40` in the shop's zone. */
export type StoryClock = {
  readonly now: () => EpochMs;
  readonly set: (local: string) => EpochMs;
  readonly pass: (minutes: number) => EpochMs;
};

/** A clock for a story told in a zone; it starts at `local` and stands still until it is set or passed on. */
export function storyClock(local: string, zone: string): StoryClock {
  let now = fromWall(local, zone);
  return {
    now: () => now,
    set: (next) => {
      now = epochMs(Math.max(now, fromWall(next, zone)));
      return now;
    },
    pass: (minutes) => {
      now = epochMs(now + minutes * MINUTE_MS);
      return now;
    },
  };
}
