import { describe, expect, it } from 'vitest';
import { fromWall, wallTime } from '../../calendar.ts';
import { HOUR_MS } from '../../time.ts';
import { clockedWork } from '../bench/clockedWork.ts';
import { openDays, todayAndOpenDays } from './openDays.ts';

const zone = 'Europe/London';
const open = [2, 3, 4].map((weekday) => ({ weekday, from: '10:00', to: '16:00' }));
const promises = { percentile: 0.8, closed: ['2026-03-04'], leadDays: { low: 1, likely: 2, high: 7 } };
const at = (time: string) => fromWall(time, zone);
const day = (date: string) => ({ opens: at(`${date}T10:00`), closes: at(`${date}T16:00`) });
const monday = at('2026-03-02T12:00');

describe('the days on which the shop is open', () => {
  it('leave out a closed today and a closing day: nobody promises them', () => {
    expect(openDays({ open, zone, promises }, monday, 3)).toEqual([
      day('2026-03-03'),
      day('2026-03-05'),
      day('2026-03-10'),
    ]);
  });
  it('are drawn with today in front, said to be closed', () => {
    const [today, next] = todayAndOpenDays({ open, zone, promises }, monday, 3);
    expect([today?.closed, next]).toEqual([true, { ...day('2026-03-03'), closed: false }]);
    expect(today?.opens).toBe(at('2026-03-02T09:00'));
  });
});

describe('a day on which the clocks change', () => {
  const night = [0, 6].map((weekday) => ({ weekday, from: '00:30', to: '06:00' }));
  // Time zone database of IANA: hours from half past midnight to six by the clock on the wall.
  it.each([
    ['Europe/London', '2026-03-29', 4.5],
    ['Europe/London', '2026-10-25', 6.5],
    ['America/New_York', '2026-03-08', 4.5],
    ['America/New_York', '2026-11-01', 6.5],
    ['Australia/Lord_Howe', '2026-10-04', 5],
    ['Australia/Lord_Howe', '2026-04-05', 6],
    ['America/Santiago', '2026-09-06', 4.5],
    ['America/Santiago', '2026-04-04', 5.5],
  ])('%s, %s: opens and closes by the clock on the wall', (changing, date, hours) => {
    const noon = fromWall(`${date}T12:00`, changing);
    const [first] = openDays({ open: night, zone: changing }, noon, 1);
    if (!first) throw new Error('the shop opens on that day');
    expect(wallTime(first.closes, changing)).toBe(`${date}T06:00`);
    expect((first.closes - first.opens) / HOUR_MS).toBe(hours);
  });
});

describe('a clock', () => {
  const turns = [] as const;
  it('begun on a closed day is no forgotten one at an hour at which the shop closes on others', () => {
    const startedAt = at('2026-03-02T17:30');
    const worked = clockedWork({ startedAt, turns }, at('2026-03-02T18:40'), { open, zone });
    expect(worked).toMatchObject({ handsOn: 70, forgotten: null });
  });
  it('stops at closing time of an open day', () => {
    const startedAt = at('2026-03-03T15:30');
    expect(clockedWork({ startedAt, turns }, at('2026-03-03T16:20'), { open, zone })).toMatchObject({
      handsOn: 30,
      forgotten: 'closing-time',
    });
  });
});
