import { describe, expect, it } from 'vitest';
import { logNormalOf } from '../../core/figures/logNormal.ts';
import { prng } from '../../core/figures/prng.ts';
import { quantile } from '../../core/figures/quantile.ts';
import { normalBelow } from '../../core/figures/specialFunctions.ts';
import { tBelow, tQuantile } from '../../core/figures/studentT.ts';
import { taskMinutes } from '../../core/labour/estimate.ts';
import { meanOf, nextOne, updated } from '../../core/labour/tasks/normalInverseGamma.ts';
import type { WorkTask } from '../../core/labour/types.ts';

describe('a normal figure with unknown mean and variance (Hoff, A First Course in Bayesian Statistical Methods, section 5.3)', () => {
  // Wing lengths of nine midges (Grogan & Wirth 1981), as quoted by several public course notes; μ₀ = 1.9, κ₀ = 1,
  // ν₀ = 1, σ₀² = 0.01. The printed results are from memory: μₙ = 1.814, σₙ² = 0.015, 95 % of θ 1.727 to 1.901 (drawn).
  const wings = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];
  const after = updated({ mean: 1.9, weight: 1, shape: 1 / 2, rate: 0.01 / 2 }, wings);

  it('nine midges move the mean to 1.814 and the variance to 0.015', () => {
    expect(after.weight).toBe(10);
    expect(2 * after.shape).toBe(10);
    expect(after.mean.toFixed(3)).toBe('1.814');
    expect((after.rate / after.shape).toFixed(3)).toBe('0.015');
  });

  it('and leave the mean between 1.727 and 1.901 with 95 %', () => {
    const { middle, scale, dof } = meanOf(after);
    expect((middle - scale * tQuantile(0.975, dof)).toFixed(3)).toBe('1.727');
    expect((middle + scale * tQuantile(0.975, dof)).toFixed(3)).toBe('1.901');
  });

  it('the next midge is Student-t by the closed form: scale² = β(κ + 1) ÷ (ακ)', () => {
    // Murphy, Conjugate Bayesian analysis of the Gaussian distribution, section 3.5 (formula from memory).
    expect(nextOne(after).scale ** 2).toBeCloseTo((after.rate * 11) / (after.shape * 10), 14);
    expect(nextOne(after)).toMatchObject({ middle: after.mean, dof: 10 });
  });
});

describe('shrinkage (Efron & Morris, Journal of the American Statistical Association 70, 1975, 311)', () => {
  // Hits of eighteen players; grand mean .265432, printed .265; .212 and .294 for .400
  // as printed (from memory), the others by the same rule.
  it.each([
    [18, '0.294'],
    [17, '0.289'],
    [16, '0.285'],
    [15, '0.280'],
    [14, '0.275'],
    [13, '0.270'],
    [12, '0.266'],
    [11, '0.261'],
    [10, '0.256'],
    [9, '0.252'],
    [8, '0.247'],
    [7, '0.242'],
  ])('%i hits in 45 are shrunk to %s', (hits, shrunk) => {
    // What is left of a player's own average, .212, is 45 ÷ (45 + κ): the prior is worth κ at bats.
    const kappa = (45 * (1 - 0.212)) / 0.212;
    const atBats = Array.from({ length: 45 }, (_, n) => (n < hits ? 1 : 0));
    expect(updated({ mean: 0.265432, weight: kappa, shape: 1, rate: 1 }, atBats).mean.toFixed(3)).toBe(shrunk);
  });
});

describe('Student’s t (NIST/SEMATECH e-Handbook 1.3.6.7.2, values from memory)', () => {
  it.each([
    [1, 0.95, '6.314'],
    [2, 0.975, '4.303'],
    [6, 0.95, '1.943'],
    [10, 0.975, '2.228'],
    [30, 0.9, '1.310'],
    [100, 0.99, '2.364'],
  ])('%i degrees of freedom, %d: %s', (dof, p, t) => {
    expect(tQuantile(p, dof).toFixed(3)).toBe(t);
    expect(tBelow(-tQuantile(p, dof), dof)).toBeCloseTo(1 - p, 10);
  });
});

describe('the log-normal', () => {
  it('with median 20,000 and σ 0.5 has 0.002781 below 5,000 (NIST/SEMATECH 8.1.6.4, from memory)', () => {
    expect(normalBelow(Math.log(5000 / 20_000) / 0.5).toFixed(6)).toBe('0.002781');
    const { mu, sigma } = logNormalOf({
      low: 20_000 * Math.exp(-0.5 * 1.6448536),
      likely: 20_000,
      high: 20_000 * Math.exp(0.5 * 1.6448536),
    });
    expect(Math.exp(mu)).toBeCloseTo(20_000, 6);
    expect(sigma).toBeCloseTo(0.5, 7);
  });

  it('of mean 60 and deviation 30 has its median at 53.6656 and its 95th percentile at 116.7191 (by the moments)', () => {
    const s2 = Math.log(1 + 0.25);
    const mu = Math.log(60) - s2 / 2;
    const at = (z: number) => Math.exp(mu + z * Math.sqrt(s2));
    const { sigma } = logNormalOf({ low: at(-1.6448536), likely: at(0), high: at(1.6448536) });
    expect(at(0).toFixed(4)).toBe('53.6656');
    expect(sigma).toBeCloseTo(0.472381, 6);
    expect(at(1.6448536).toFixed(4)).toBe('116.7191');
  });
});

describe('three points', () => {
  /** Minutes as estimates draw them for work stated by these three points. */
  function drawnOf(low: number, likely: number, high: number): readonly number[] {
    const random = prng(8);
    const task: WorkTask = { id: 'work', kind: 'fitting', minutes: { low, likely, high }, chance: 1 };
    return Array.from({ length: 20_000 }, () => taskMinutes(task, random));
  }
  const meanOfAll = (drawn: readonly number[]) => drawn.reduce((sum, one) => sum + one, 0) / drawn.length;

  // Low, likely, high and the printed mean of a worked network exercise (a secondary, public copy: wizedu.com, question
  // 717873), and 8, 10, 24 with mean 12 of another. There low and high are the ends; here one in twenty lies beyond each.
  it.each([
    [5, 5, 7, 5.33],
    [1, 2, 5, 2.33],
    [5, 5, 5, 5],
    [4, 8, 13, 8.17],
    [1, 10, 17, 9.67],
    [1, 5, 7, 4.67],
    [2, 6, 9, 5.83],
    [4, 4, 6, 4.33],
    [2, 7, 10, 6.67],
    [2, 4, 7, 4.17],
    [6, 10, 13, 9.83],
    [2, 6, 6, 5.33],
    [2, 2, 3, 2.17],
    [7, 7, 12, 7.83],
    [8, 10, 24, 12],
  ])(
    '%d, %d, %d: the mean drawn is within 5 %% of the printed %d, or the three points are flagged as skewed',
    (low, likely, high, printed) => {
      const off = Math.abs(meanOfAll(drawnOf(low, likely, high)) / printed - 1);
      expect(off <= 0.05 || logNormalOf({ low, likely, high }).skewed).toBe(true);
    },
  );

  it('are not flagged where low and high lie about as many times away', () => {
    const flagged = [
      [1, 2, 5],
      [4, 8, 13],
      [2, 4, 7],
    ].map(([low = 0, likely = 0, high = 0]) => logNormalOf({ low, likely, high }).skewed);
    expect(flagged).toEqual([false, false, false]);
  });

  it('have a log-normal’s mean: 0.3 of P10 and of P90 and 0.4 of the median, for moderate spreads', () => {
    // Swanson's rule, as the dictionary of the Society of Exploration Geophysicists states it (wiki.seg.org). Rough beyond
    // a deviation of about half on the logarithm.
    for (const [low, likely, high] of [
      [6, 12, 24],
      [2, 5, 12],
      [20, 30, 45],
    ] as const) {
      const drawn = drawnOf(low, likely, high);
      const [p10, p50, p90] = [0.1, 0.5, 0.9].map((p) => quantile(drawn, p) ?? Number.NaN) as [number, number, number];
      expect(Math.abs((0.3 * p10 + 0.4 * p50 + 0.3 * p90) / meanOfAll(drawn) - 1)).toBeLessThan(0.015);
    }
  });

  it('of a log-normal with mean 60 and deviation 30 are drawn with that mean, that deviation and 79.8651 as 80th percentile', () => {
    // Percentiles by the moments, recomputed: median 53.6656, P95 116.7191, and P5 as far below the median as that is above.
    const drawn = drawnOf(53.6656 ** 2 / 116.7191, 53.6656, 116.7191);
    const mean = meanOfAll(drawn);
    expect(Math.abs(mean / 60 - 1)).toBeLessThan(0.01);
    expect(Math.abs(Math.sqrt(meanOfAll(drawn.map((one) => (one - mean) ** 2))) / 30 - 1)).toBeLessThan(0.03);
    expect(Math.abs((quantile(drawn, 0.8) ?? 0) / 79.8651 - 1)).toBeLessThan(0.015);
  });
});
