import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EpochMs, epochMs } from '../../time.ts';
import { type Stretch, workCalendar } from './calendar.ts';
import { dayFor, lateChance, type OpenDay } from './day.ts';
import { leftOf, minutesLeft, spanLeft } from './left.ts';
import { forecastQueue, type QueuedJob } from './queue.ts';

const MONDAY = epochMs(Date.UTC(2026, 10, 30));
const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const at = (day: number, hour: number): EpochMs => epochMs(MONDAY + day * DAY + hour * HOUR);
const LEAD = { low: 1, likely: 2, high: 7 };

/** A bench from nine to five on every day that is open. */
const week = (open: readonly boolean[], hands: number): { stretches: Stretch[]; days: OpenDay[] } => ({
  stretches: open.flatMap((is, day) => (is ? [{ from: at(day, 9), to: at(day, 17), hands }] : [])),
  days: open.flatMap((is, day) => (is ? [{ opens: at(day, 9), closes: at(day, 17) }] : [])),
});

const machine = (id: string, more: Partial<QueuedJob> = {}): QueuedJob => ({
  id,
  handsOn: { p10: 30, p50: 60, p90: 120 },
  spent: 0,
  alone: null,
  part: { is: 'perhaps', chance: 0 },
  ...more,
});

const anyMachine = fc
  .record({
    p50: fc.integer({ min: 10, max: 300 }),
    wide: fc.double({ min: 1.1, max: 3, noNaN: true }),
    spent: fc.integer({ min: 0, max: 400 }),
    part: fc.double({ min: 0, max: 1, noNaN: true }),
    alone: fc.boolean(),
  })
  .map(({ p50, wide, spent, part, alone }) => ({
    handsOn: { p10: p50 / wide, p50, p90: p50 * wide },
    spent,
    alone: alone ? { low: 20, likely: 60, high: 600 } : null,
    part: { is: 'perhaps' as const, chance: part },
  }));
const anyQueue = fc
  .array(anyMachine, { maxLength: 8 })
  .map((some) => some.map((one, n) => machine(`machine ${n}`, one)));
const anyWeek = fc
  .record({
    open: fc.array(fc.boolean(), { minLength: 20, maxLength: 40 }),
    hands: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ open, hands }) => week(open, hands));

const dayOf = (queue: readonly QueuedJob[], shop: ReturnType<typeof week>, percentile: number): number => {
  const forecast = forecastQueue(queue, workCalendar(shop.stretches), LEAD, at(0, 8), 60).get('ours');
  if (!forecast) throw new Error('ours is not in the queue');
  return dayFor(forecast, percentile, shop.days) ?? Number.POSITIVE_INFINITY;
};

describe('work through opening hours', () => {
  const { stretches } = week([true, false, true], 2);
  const { byAll, byOne } = workCalendar(stretches);
  it('goes on the next open morning, past the closed day', () => {
    expect(byOne(at(0, 9), 8 * 60)).toBe(at(0, 17));
    expect(byOne(at(0, 9), 9 * 60)).toBe(at(2, 10));
    expect(byOne(at(0, 16), 120)).toBe(at(2, 10));
  });
  it('is twice as fast by two pairs of hands for a queue, not for one machine', () => {
    expect(byAll(at(0, 9), 120)).toBe(at(0, 10));
    expect(byOne(at(0, 9), 120)).toBe(at(0, 11));
  });
  it('begins with the first stretch when asked by night, and has no end past the last one', () => {
    expect(byOne(at(0, 2), 30)).toBe(at(0, 9.5));
    expect(byOne(at(2, 9), 8 * 60 + 1)).toBeNull();
  });
});

it('hours in which nobody is at the bench are none', () => {
  const [first] = week([true], 2).stretches;
  if (!first) throw new Error('the shop opens');
  const nobody = workCalendar([{ ...first, hands: 0 }]);
  expect(nobody.byAll(at(0, 9), 1)).toBeNull();
  expect(nobody.byOne(at(0, 9), 0)).toBe(at(0, 9));
});

it('what is done at the very moment that was promised is not late; without a run nothing is', () => {
  const done = [at(0, 10), at(0, 11)];
  expect(lateChance({ done, runs: 2 }, at(0, 11))).toBe(0);
  expect(lateChance({ done, runs: 4 }, at(0, 10))).toBe(0.75);
  expect(lateChance({ done: [], runs: 0 }, at(0, 10))).toBe(0);
});

describe('what is left of a job', () => {
  it('is the whole estimate while nothing was done', () => {
    expect(minutesLeft({ p10: 30, p50: 60, p90: 120 }, 0)(0.5)).toBeCloseTo(60, 6);
    expect(minutesLeft({ p10: 30, p50: 60, p90: 120 }, 0)(0.9)).toBeCloseTo(120, 1);
    expect(spanLeft({ low: 1, likely: 2, high: 4 }, 0)(0.95)).toBeCloseTo(4, 3);
  });
  it('is never nothing when it runs long, and follows the log-normal given that it was not over', () => {
    // Given T > t, P(T > x) = (1 − F(x)) / (1 − F(t)); σ = 0.5, median 20 000, F(5000) = 0.002781 (NIST/SEMATECH 8.1.6.4).
    const left = leftOf(Math.log(20_000), 0.5, 5000);
    const u = (0.5 - 0.002781) / (1 - 0.002781);
    expect(left(u)).toBeCloseTo(15_000, -1);
    expect(minutesLeft({ p10: 30, p50: 60, p90: 120 }, 500)(0.01)).toBeGreaterThan(0);
  });
});

describe('the promised day', () => {
  it('is never earlier when more machines wait before ours', () => {
    fc.assert(
      fc.property(anyQueue, anyMachine, fc.nat(8), anyWeek, (queue, one, place, shop) => {
        const ours = machine('ours');
        const longer = [...queue.slice(0, place), machine('one more', one), ...queue.slice(place)];
        expect(dayOf([...longer, ours], shop, 0.8)).toBeGreaterThanOrEqual(dayOf([...queue, ours], shop, 0.8));
      }),
      { numRuns: 60 },
    );
  });
  it('is never earlier when the shop wants to be surer', () => {
    fc.assert(
      fc.property(
        anyQueue,
        anyMachine,
        anyWeek,
        fc.double({ min: 0.5, max: 0.98, noNaN: true }),
        (queue, one, shop, p) => {
          const jobs = [...queue, machine('ours', one)];
          expect(dayOf(jobs, shop, p + 0.01)).toBeGreaterThanOrEqual(dayOf(jobs, shop, p));
        },
      ),
      { numRuns: 60 },
    );
  });
  it('is a day on which the shop is open, and never before it is likely done', () => {
    fc.assert(
      fc.property(anyQueue, anyWeek, (queue, shop) => {
        const jobs = [...queue, machine('ours')];
        const forecast = forecastQueue(jobs, workCalendar(shop.stretches), LEAD, at(0, 8), 60).get('ours');
        const day = forecast && dayFor(forecast, 0.8, shop.days);
        if (!forecast || day == null) return;
        expect(shop.days.map((one) => one.closes)).toContain(day);
        expect(lateChance(forecast, day)).toBeLessThanOrEqual(0.2 + 1e-9);
      }),
      { numRuns: 60 },
    );
  });
  it('waits for a part: for the supplier’s day when ordered, and longer when it is overdue already', () => {
    const shop = week(
      Array.from({ length: 40 }, () => true),
      1,
    );
    const ordered = (on: EpochMs) => machine('ours', { part: { is: 'ordered', at: on, due: epochMs(on + 3 * DAY) } });
    const none = dayOf([machine('ours')], shop, 0.5);
    const fresh = dayOf([ordered(at(0, 8))], shop, 0.5);
    expect(none).toBe(at(0, 17));
    expect(fresh).toBe(at(3, 17));
    const overdue = dayOf([ordered(at(-10, 8))], shop, 0.5);
    expect(overdue).toBeGreaterThan(at(0, 17));
  });
  it('is nearer by what was done of it already', () => {
    const { stretches } = week([true, true], 1);
    const two = { p10: 120, p50: 120, p90: 120 };
    const done = (spent: number) =>
      forecastQueue([machine('ours', { handsOn: two, spent })], workCalendar(stretches), LEAD, at(0, 9), 1).get('ours')
        ?.done;
    expect(done(0)).toEqual([at(0, 11)]);
    expect(done(90)).toEqual([at(0, 9.5)]);
  });
  it('gives a machine the same luck whoever else waits', () => {
    const { stretches } = week([true, true, true, true], 1);
    const alone = forecastQueue([machine('ours')], workCalendar(stretches), LEAD, at(0, 9), 50).get('ours');
    const first = forecastQueue([machine('ours'), machine('theirs')], workCalendar(stretches), LEAD, at(0, 9), 50);
    expect(first.get('ours')).toEqual(alone);
  });
});
