import { Temporal } from 'temporal-polyfill';
import { type EpochMs, epochMs } from './time.ts';

// The shop's days and its clock on the wall. The zone is always said; a day has as many hours as its zone gives it.

/** A day of the calendar, `YYYY-MM-DD` (ISO 8601). */
export type CalendarDate = string;

/**
 * The moment of a local wall time `YYYY-MM-DDTHH:MM` in a zone. In an hour that is skipped the time as much later as the
 * clocks jumped; of an hour that comes twice the first (RFC 5545, 3.3.5).
 * @throws {RangeError} for what is no wall time, or no zone.
 */
export function fromWall(local: string, zone: string): EpochMs {
  return epochMs(Temporal.PlainDateTime.from(local).toZonedDateTime(zone).epochMilliseconds);
}

/**
 * The wall time `YYYY-MM-DDTHH:MM` of a moment (milliseconds since 1970) in a zone.
 * @throws {RangeError} for what is no zone, or no moment of a calendar.
 */
export function wallTime(at: number, zone: string): string {
  return zoned(at, zone).toPlainDateTime().toString({ smallestUnit: 'minute' });
}

/**
 * The day of a moment (milliseconds since 1970) in a zone.
 * @throws {RangeError} for what is no zone, or no moment of a calendar.
 */
export const dayOf = (at: number, zone: string): CalendarDate => dateOf(at, zone).toString();

/**
 * The year of a moment (milliseconds since 1970) in a zone.
 * @throws {RangeError} for what is no zone, or no moment of a calendar.
 */
export const yearOf = (at: number, zone: string): number => dateOf(at, zone).year;

/**
 * The day so many days after another.
 * @throws {RangeError} for what is no day of the calendar.
 */
export const daysAfter = (day: CalendarDate, days: number): CalendarDate =>
  Temporal.PlainDate.from(day).add({ days }).toString();

/**
 * The day so many months after another; the month's last day where it has no such day.
 * @throws {RangeError} for what is no day of the calendar.
 */
export const monthsAfter = (day: CalendarDate, months: number): CalendarDate =>
  Temporal.PlainDate.from(day).add({ months }).toString();

/**
 * How many days the second day comes after the first; below zero when before it.
 * @throws {RangeError} for what is no day of the calendar.
 */
export const daysBetween = (first: CalendarDate, second: CalendarDate): number =>
  Temporal.PlainDate.from(first).until(second).days;

/**
 * The same time of day so many days after `at` (epoch milliseconds), before it when below zero: a day has the hours that its zone gives it. In an hour
 * that is skipped the time as much later as the clocks jumped; of an hour that comes twice the first.
 * @throws {RangeError} for what is no zone, or no moment of a calendar.
 */
export const afterDays = (at: number, days: number, zone: string): EpochMs =>
  epochMs(zoned(at, zone).add({ days }).epochMilliseconds);

/**
 * How many whole days lie between two moments, from one time of day to the same one; below zero when the second is before
 * the first.
 * @throws {RangeError} for what is no zone, or no moment of a calendar.
 */
export const wholeDaysBetween = (from: number, to: number, zone: string): number =>
  zoned(from, zone).until(zoned(to, zone), { largestUnit: 'days' }).days;

/**
 * The day of the week; 0 is Sunday.
 * @throws {RangeError} for what is no day of the calendar.
 */
export const weekdayOf = (day: CalendarDate): number => Temporal.PlainDate.from(day).dayOfWeek % 7;

const zoned = (at: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(Math.floor(at)).toZonedDateTimeISO(zone);
const dateOf = (at: number, zone: string) => zoned(at, zone).toPlainDate();
