import { describe, expect, it } from 'vitest';
import { differenceInterval } from '../../core/figures/differenceInterval.ts';
import { wilson } from '../../core/figures/interval.ts';
import { medianInterval } from '../../core/figures/medianInterval.ts';
import { pinball } from '../../core/figures/pinball.ts';
import { incompleteBeta } from '../../core/figures/specialFunctions.ts';
import { calibrationOf } from '../../core/labour/calibration/calibration.ts';

describe('the pinball loss (worked example in the documentation of sktime’s PinballLoss, 0.23)', () => {
  // Printed there: 0.16625, 0.275, 0.09625 for the shares 0.05, 0.5, 0.95.
  const came = [3, -0.5, 2, 7, 2];
  it.each([
    [0.05, [1.25, 0, 1, 4, 0.625], 0.16625],
    [0.5, [2.5, 0, 2, 8, 1.25], 0.275],
    [0.95, [3.75, 0, 3, 12, 1.875], 0.09625],
  ])('for the share %d', (p, said, loss) => {
    const mean = came.reduce((sum, one, n) => sum + pinball(said[n] as number, one, p), 0) / came.length;
    expect(mean).toBeCloseTo(loss, 12);
  });

  it('is summed the same over jobs', () => {
    const scored = came.map((took, n) => ({
      p10: 0,
      p50: [2.5, 0, 2, 8, 1.25][n] as number,
      p90: 0,
      took,
    }));
    expect(calibrationOf(scored)?.pinball.p50).toBeCloseTo(0.275, 12);
  });
});

describe('the interval of a median by order statistics', () => {
  // As tested by a public statistics library: n = 24 ranks 7 and 18, coverage 0.9773; n = 100 ranks 40 and 61; none for 5.
  const upTo = (n: number) => Array.from({ length: n }, (_, index) => index + 1);
  it('of 24 lies between ranks 7 and 18 and covers 0.9773, of 100 between 40 and 61; five are too few', () => {
    expect(medianInterval(upTo(24))).toEqual({ low: 7, high: 18 });
    expect((1 - 2 * incompleteBeta(0.5, 24 - 7 + 1, 7)).toFixed(4)).toBe('0.9773');
    expect(medianInterval(upTo(100))).toEqual({ low: 40, high: 61 });
    expect(medianInterval(upTo(5))).toBeNull();
  });
});

describe('the interval of a median against a printed table', () => {
  // Nair 1940 as printed by Dixon and Massey 1969, table 5: number of data, rank from either end, cover in percent.
  const TABLE = [
    [6, 1, 96.9],
    [9, 2, 96.1],
    [12, 3, 96.1],
    [15, 4, 96.5],
    [17, 5, 95.1],
    [20, 6, 95.9],
    [25, 8, 95.7],
    [30, 10, 95.7],
    [35, 12, 95.9],
    [44, 16, 95.1],
    [51, 19, 95.1],
    [65, 25, 95.4],
  ] as const;
  it.each(TABLE)('of %i lies %i ranks from either end and covers %d %%', (n, rank, cover) => {
    const data = Array.from({ length: n }, (_, index) => index + 1);
    expect(medianInterval(data)).toEqual({ low: rank, high: n + 1 - rank });
    expect(100 * (1 - 2 * incompleteBeta(0.5, n - rank + 1, rank))).toBeCloseTo(cover, 1);
  });
});

describe('the interval of a difference', () => {
  it('of the shares 56 of 70 and 48 of 80 lies between 0.0524 and 0.3339 (Newcombe 1998, his method 10)', () => {
    const share = (count: number, of: number) => ({ figure: count / of, between: wilson(count, of) });
    const { low, high } = differenceInterval(share(56, 70), share(48, 80));
    expect([low.toFixed(4), high.toFixed(4)]).toEqual(['0.0524', '0.3339']);
  });
});

describe('the share inside the band', () => {
  it('13 of 16 lies between 0.5435 and 0.9595 (Fagerland, Lydersen & Laake 2017, ch. 2): too few to say', () => {
    const jobs = Array.from({ length: 16 }, (_, n) => ({ p10: 1, p50: 2, p90: 3, took: n < 13 ? 2 : 9 }));
    const inside = calibrationOf(jobs)?.inside;
    expect([inside?.interval.low.toFixed(4), inside?.interval.high.toFixed(4)]).toEqual(['0.5435', '0.9595']);
    expect(inside?.says).toBe('too-few-to-say');
  });
});
