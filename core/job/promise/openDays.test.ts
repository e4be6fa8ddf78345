import { describe, expect, it } from 'vitest';
import { clockedWork } from '../bench/clockedWork.ts';
import { openDays, todayAndOpenDays } from './openDays.ts';
import { fromWall } from './wallTime.ts';

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
