import { type EpochMs, epochMs } from '../../time.ts';

/** Milliseconds UTC of a local wall time `YYYY-MM-DDTHH:MM` in a zone, found by asking the zone what it shows. In a skipped hour the time after the change. */
export function fromWall(local: string, zone: string): EpochMs {
  const wanted = Date.parse(`${local}:00Z`);
  const shows = (utc: number) => Date.parse(`${wallTime(utc, zone)}:00Z`);
  const first = wanted - (shows(wanted) - wanted);
  return epochMs(first - (shows(first) - wanted));
}

/** The wall time `YYYY-MM-DDTHH:MM` of a moment in a zone. */
export function wallTime(at: number, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(at);
  const of = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  return `${of('year')}-${of('month')}-${of('day')}T${of('hour')}:${of('minute')}`;
}
