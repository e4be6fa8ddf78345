import { type EpochMs, epochMs } from '../../../core/time.ts';

/** A wall clock that a story sets: `2026-10-13T09:40` in the shop's zone. */
export type StoryClock = { readonly now: () => EpochMs; readonly set: (local: string) => EpochMs; readonly pass: (minutes: number) => EpochMs };

/** Milliseconds UTC of a local wall time in a zone, found by asking the zone what it shows. */
export function fromWall(local: string, zone: string): EpochMs {
  const wanted = Date.parse(`${local}:00Z`);
  const shows = (utc: number) => {
    const parts = new Intl.DateTimeFormat('en-GB', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).formatToParts(utc);
    const of = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
    return Date.parse(`${of('year')}-${of('month')}-${of('day')}T${of('hour')}:${of('minute')}:00Z`);
  };
  const first = wanted - (shows(wanted) - wanted);
  return epochMs(first - (shows(first) - wanted));
}

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
      now = epochMs(now + minutes * 60_000);
      return now;
    },
  };
}
