import { expect, it } from 'vitest';
import { aJobAt, shopSettings } from '../../../tests/builders/jobAt.ts';
import { fromWall } from '../../calendar.ts';
import { dayMinutesOf, daysOf, daysUntilPromised, USUAL_DAY_MINUTES } from './delay.ts';
import { USUAL_PROMISES } from './turns.ts';

const at = (time: string) => fromWall(time, shopSettings.zone);

it('a day more costs what the shop set, and the usual until it did', () => {
  expect(dayMinutesOf({ ...shopSettings, promises: { ...USUAL_PROMISES, dayMinutes: 45 } })).toBe(45);
  expect(dayMinutesOf({ ...shopSettings, promises: USUAL_PROMISES })).toBe(USUAL_DAY_MINUTES);
  expect(dayMinutesOf(null)).toBe(USUAL_DAY_MINUTES);
});

it('days to the promised one are days of the calendar: an hour over midnight is one', () => {
  const promised = { at: at('2026-10-07T00:30'), p90: at('2026-10-08T18:00'), told: true };
  const until = (now: string) => daysUntilPromised(aJobAt('tracing', { promised }), shopSettings, at(now));
  expect(until('2026-10-06T23:30')).toBe(1);
  expect(until('2026-10-07T23:30')).toBe(0);
  expect(until('2026-10-09T08:00')).toBe(-2);
  expect(daysUntilPromised(aJobAt('tracing'), shopSettings, at('2026-10-06T12:00'))).toBeNull();
});

it('a wait is said as one day at least; an hour more than whole days begins no other', () => {
  expect([5, 1440, 1500, 1501, 2 * 1440 + 60, 2 * 1440 + 61].map(daysOf)).toEqual([1, 1, 1, 2, 2, 3]);
});
