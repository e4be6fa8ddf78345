import { Temporal } from 'temporal-polyfill';
import { type EpochMs, epochMs } from '../../time.ts';

/**
 * The moment of a local wall time `YYYY-MM-DDTHH:MM` in a zone. In an hour that is skipped the time as much later as the
 * clocks jumped; of an hour that comes twice the first (RFC 5545, 3.3.5).
 * @throws {RangeError} for what is no wall time, or no zone.
 */
export function fromWall(local: string, zone: string): EpochMs {
  return epochMs(Temporal.PlainDateTime.from(local).toZonedDateTime(zone).epochMilliseconds);
}

/** The wall time `YYYY-MM-DDTHH:MM` of a moment in a zone. */
export function wallTime(at: number, zone: string): string {
  return zoned(at, zone).toPlainDateTime().toString({ smallestUnit: 'minute' });
}

const zoned = (at: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(Math.floor(at)).toZonedDateTimeISO(zone);
