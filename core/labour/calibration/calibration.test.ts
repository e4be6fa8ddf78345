import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medianInterval } from '../../figures/medianInterval.ts';
import { pinball } from '../../figures/pinball.ts';
import { prng } from '../../figures/prng.ts';
import { quantile } from '../../figures/quantile.ts';
import { calibrationOf, type Scored } from './calibration.ts';

const jobs = (inside: number, above: number): readonly Scored[] => [
  ...Array.from({ length: inside }, () => ({ p10: 20, p50: 40, p90: 80, took: 45 })),
  ...Array.from({ length: above }, () => ({ p10: 20, p50: 40, p90: 80, took: 120 })),
];

describe('estimates against what jobs took', () => {
  it('are too few to say until the interval is narrow or leaves eight in ten out', () => {
    expect(calibrationOf([])).toBeNull();
    expect(calibrationOf(jobs(4, 1))?.inside).toMatchObject({ count: 4, of: 5, share: 0.8, says: 'too-few-to-say' });
    expect(calibrationOf(jobs(80, 20))?.inside.says).toBe('as-said');
    expect(calibrationOf(jobs(40, 60))?.inside.says).toBe('too-narrow');
    expect(calibrationOf(jobs(100, 0))?.inside.says).toBe('too-wide');
  });

  it('say how often a job was done within each figure, and how much longer jobs take', () => {
    const { within, bias } = calibrationOf(jobs(6, 4)) ?? { within: [], bias: null };
    expect(within.map(({ said, count }) => [said, count])).toEqual([
      [0.1, 0],
      [0.5, 0],
      [0.9, 6],
    ]);
    expect(bias?.times).toBeCloseTo(45 / 40, 9);
    expect(bias?.interval?.high).toBe(3);
    expect(calibrationOf(jobs(3, 0))?.bias.interval).toBeNull();
  });

  it('drawn from what was said are as said', () => {
    const chance = prng(9);
    const drawn = Array.from({ length: 2000 }, () => {
      const middle = 30 + 60 * chance.next();
      const at = (z: number) => middle * Math.exp(0.5 * z);
      return { p10: at(-1.2816), p50: middle, p90: at(1.2816), took: at(chance.nextNormal()) };
    });
    const figures = calibrationOf(drawn);
    expect(figures?.inside.says).toBe('as-said');
    for (const { said, interval } of figures?.within ?? []) {
      expect(interval.low).toBeLessThan(said);
      expect(interval.high).toBeGreaterThan(said);
    }
    expect(figures?.bias.interval?.low).toBeLessThan(1);
    expect(figures?.bias.interval?.high).toBeGreaterThan(1);
  });
});

const someMinutes = fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 60 });

describe('the pinball loss', () => {
  it('is never below nothing, and the quantile itself loses least', () => {
    fc.assert(
      fc.property(someMinutes, fc.constantFrom(0.1, 0.5, 0.9), fc.integer({ min: 1, max: 500 }), (came, p, other) => {
        const loss = (said: number) => came.reduce((sum, one) => sum + pinball(said, one, p), 0);
        expect(loss(quantile(came, p, 1) ?? 0)).toBeLessThanOrEqual(loss(other) + 1e-9);
      }),
    );
  });
});

describe('the interval of a median', () => {
  it('holds the median and is of the data', () => {
    fc.assert(
      fc.property(someMinutes, (data) => {
        const interval = medianInterval(data);
        expect(interval === null).toBe(data.length < 6);
        if (!interval) return;
        expect(interval.low).toBeLessThanOrEqual(quantile(data, 0.5) ?? 0);
        expect(interval.high).toBeGreaterThanOrEqual(quantile(data, 0.5) ?? 0);
        expect(data).toContain(interval.low);
      }),
    );
  });
});
