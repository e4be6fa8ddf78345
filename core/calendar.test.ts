import { describe, expect, it } from 'vitest';
import {
  afterDays,
  dayOf,
  daysAfter,
  daysBetween,
  fromWall,
  monthsAfter,
  wallTime,
  weekdayOf,
  wholeDaysBetween,
  yearOf,
} from './calendar.ts';
import { HOUR_MS } from './time.ts';

const utc = (text: string) => Date.parse(text);

// When the clocks change: time zone database of IANA, files europe, northamerica, australasia, southamerica; written down
// from memory, so that a slip of mine would show against the tables of the platform.
describe('a wall time where the clocks change', () => {
  it.each([
    // 01:00 becomes 02:00, and 02:00 becomes 01:00.
    ['Europe/London', 'skipped', '2026-03-29T01:30', '2026-03-29T01:30Z', '2026-03-29T02:30'],
    ['Europe/London', 'doubled', '2026-10-25T01:30', '2026-10-25T00:30Z', '2026-10-25T01:30'],
    // 02:00 becomes 03:00, and 02:00 becomes 01:00.
    ['America/New_York', 'skipped', '2026-03-08T02:30', '2026-03-08T07:30Z', '2026-03-08T03:30'],
    ['America/New_York', 'doubled', '2026-11-01T01:30', '2026-11-01T05:30Z', '2026-11-01T01:30'],
    // By half an hour: 02:00 becomes 02:30, and 02:00 becomes 01:30.
    ['Australia/Lord_Howe', 'skipped', '2026-10-04T02:10', '2026-10-03T15:40Z', '2026-10-04T02:40'],
    ['Australia/Lord_Howe', 'doubled', '2026-04-05T01:45', '2026-04-04T14:45Z', '2026-04-05T01:45'],
    // At midnight: there is no 00:30 on that day, and 23:30 comes twice on the other.
    ['America/Santiago', 'skipped', '2026-09-06T00:30', '2026-09-06T04:30Z', '2026-09-06T01:30'],
    ['America/Santiago', 'doubled', '2026-04-04T23:30', '2026-04-05T02:30Z', '2026-04-04T23:30'],
  ])('%s, %s: %s', (zone, _, wall, at, shows) => {
    expect(fromWall(wall, zone)).toBe(utc(at));
    expect(wallTime(utc(at), zone)).toBe(shows);
  });

  it.each([
    ['Europe/London', '2026-03-29', 23],
    ['Europe/London', '2026-10-25', 25],
    ['America/New_York', '2026-03-08', 23],
    ['America/New_York', '2026-11-01', 25],
    ['Australia/Lord_Howe', '2026-10-04', 23.5],
    ['Australia/Lord_Howe', '2026-04-05', 24.5],
    ['America/Santiago', '2026-09-06', 23],
    ['America/Santiago', '2026-04-04', 25],
    ['America/Santiago', '2026-04-06', 24],
  ])('%s: %s has %d hours', (zone, day, hours) => {
    const [begins, ends] = [fromWall(`${day}T00:00`, zone), fromWall(`${daysAfter(day, 1)}T00:00`, zone)];
    expect((ends - begins) / HOUR_MS).toBe(hours);
    expect([begins, ends - 1, ends].map((at) => dayOf(at, zone))).toEqual([day, day, daysAfter(day, 1)]);
  });
});

describe('days of the calendar', () => {
  it('follow each other over the ends of months, years and February', () => {
    expect(daysAfter('2028-02-28', 1)).toBe('2028-02-29');
    expect(daysAfter('2026-12-31', 1)).toBe('2027-01-01');
    expect(monthsAfter('2027-01-31', 1)).toBe('2027-02-28');
    expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
    expect(daysBetween('2026-03-30', '2026-03-28')).toBe(-2);
  });

  it('have their weekday, Sunday first', () => {
    expect(['2026-03-29', '2026-03-30', '2026-04-04'].map(weekdayOf)).toEqual([0, 1, 6]);
  });

  it('and years are those of the zone', () => {
    const newYear = utc('2027-01-01T02:00Z');
    expect([yearOf(newYear, 'Europe/London'), yearOf(newYear, 'America/Santiago')]).toEqual([2027, 2026]);
    expect(dayOf(newYear, 'America/Santiago')).toBe('2026-12-31');
  });

  it.each([
    // Over the changes of the clocks above; the time of day stays, whatever the hours between.
    ['Europe/London', '2026-03-20T23:30', 14, '2026-04-03T23:30', 14 * 24 - 1],
    ['Europe/London', '2026-10-20T08:00', 14, '2026-11-03T08:00', 14 * 24 + 1],
    ['America/New_York', '2026-03-01T23:59', 30, '2026-03-31T23:59', 30 * 24 - 1],
    ['Australia/Lord_Howe', '2026-10-01T12:00', 7, '2026-10-08T12:00', 7 * 24 - 0.5],
    ['America/Santiago', '2026-04-01T23:00', 5, '2026-04-06T23:00', 5 * 24 + 1],
    ['Europe/London', '2026-11-03T08:00', -14, '2026-10-20T08:00', -(14 * 24 + 1)],
  ])('%s: %s and %d days is %s', (zone, from, days, until, hours) => {
    const [begins, ends] = [fromWall(from, zone), fromWall(until, zone)];
    expect(afterDays(begins, days, zone)).toBe(ends);
    expect((ends - begins) / HOUR_MS).toBe(hours);
    expect(wholeDaysBetween(begins, ends, zone)).toBe(days);
    const short = days > 0 ? ends - 1 : ends + 1;
    expect(wholeDaysBetween(begins, short, zone)).toBe(days > 0 ? days - 1 : days + 1);
  });

  it('are refused where they are none', () => {
    expect(() => fromWall('2026-02-30T25:00', 'Europe/London')).toThrow(RangeError);
    expect(() => fromWall('2026-02-03T10:00', 'Europe/Nowhere')).toThrow(RangeError);
  });
});
