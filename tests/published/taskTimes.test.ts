import { describe, expect, it } from 'vitest';
import { normalBelow } from '../../core/figures/specialFunctions.ts';
import { tBelow, tQuantile } from '../../core/figures/studentT.ts';
import { meanOf, nextOne, updated } from '../../core/labour/tasks/normalInverseGamma.ts';
import { logNormalOf } from '../../core/labour/tasks/taskTime.ts';

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
