import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BANDS, type DayJob, type DayRoom, dayLayout } from './dayLayout.ts';
import { type DayOpening, dayScale } from './dayScale.ts';

const HOUR = 3_600_000;
const NINE = Date.UTC(2026, 9, 13, 9);
/** Tuesday to Saturday, then Tuesday again. */
const DAYS: readonly DayOpening[] = [0, 1, 2, 3, 4, 7].map((day) => ({
  opens: NINE + day * 24 * HOUR,
  closes: NINE + day * 24 * HOUR + 9 * HOUR,
}));
const scale = dayScale(DAYS, 250, 1256, (at) => String(new Date(at).getUTCHours()));
const room: DayRoom = { left: 176, right: 1256, nowX: 323, widthOf: () => 180, plateWidth: () => 190, lanes: 5 };
const job = (id: string, hours: number | null, more: Partial<DayJob> = {}): DayJob => ({
  id,
  name: id,
  second: '',
  band: 'ours',
  promised: hours === null ? null : NINE + hours * HOUR,
  ninety: null,
  ...more,
});

describe('the line of time', () => {
  it('gives today the most room, keeps hours even within a day, and folds three nights into three joints', () => {
    const [today, tomorrow] = scale.days;
    expect((today?.to ?? 0) - (today?.from ?? 0)).toBeGreaterThan(2 * ((tomorrow?.to ?? 0) - (tomorrow?.from ?? 0)));
    expect(scale.at(NINE + 2 * HOUR) - scale.at(NINE + HOUR)).toBeCloseTo(
      scale.at(NINE + 5 * HOUR) - scale.at(NINE + 4 * HOUR),
    );
    expect(scale.joints).toHaveLength(7);
    expect(scale.days.at(-1)?.to).toBeCloseTo(1256);
  });
  it('puts a point at the moment it is promised for, wherever its label must go', () => {
    const { bands } = dayLayout([job('a', 4), job('b', 4.2), job('c', 4.4)], [], scale, room);
    expect(bands[0]?.points.map((point) => point.x)).toEqual([4, 4.2, 4.4].map((hour) => scale.at(NINE + hour * HOUR)));
  });
  it('gathers far days when a band grows too high, today never, and loses no job', () => {
    const many = Array.from({ length: 40 }, (_, i) => job(`j${i}`, i < 6 ? i : 24 * (1 + (i % 4)) + (i % 8)));
    const { bands } = dayLayout(many, [], scale, room);
    const points = bands[0]?.points ?? [];
    expect(points.flatMap((point) => point.jobs)).toHaveLength(40);
    expect(points.some((point) => point.jobs.length > 1)).toBe(true);
    expect(
      points
        .filter((point) => (point.jobs[0]?.promised ?? 0) < NINE + 9 * HOUR)
        .every((point) => point.jobs.length === 1),
    ).toBe(true);
  });
  it('never lets two labels of a band cross', () => {
    const some = fc.array(
      fc.record({
        hours: fc.double({ min: -30, max: 170, noNaN: true }),
        band: fc.constantFrom(...BANDS),
        late: fc.boolean(),
      }),
      { maxLength: 24 },
    );
    fc.assert(
      fc.property(some, (list) => {
        const jobs = list.map((one, i) =>
          job(String(i), one.hours, { band: one.band, ninety: one.late ? NINE + (one.hours + 6) * HOUR : null }),
        );
        for (const band of dayLayout(jobs, [], scale, room).bands) {
          expect(band.height).toBeGreaterThanOrEqual(80);
          for (const [i, a] of band.points.entries()) {
            for (const b of band.points.slice(i + 1)) {
              if (a.y !== b.y) continue;
              const span = (point: typeof a) =>
                (point.label.anchor === 'start'
                  ? [point.label.x, point.label.x + 180]
                  : [point.label.x - 180, point.label.x]) as [number, number];
              const [p, q] = [span(a), span(b)];
              expect(p[1] <= q[0] || q[1] <= p[0]).toBe(true);
            }
          }
        }
      }),
    );
  });
});
