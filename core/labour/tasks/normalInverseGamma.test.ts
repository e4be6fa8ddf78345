import { describe, expect, it } from 'vitest';
import { type Believed, knownNoBetterThan, meanOf, nextOne, updated } from './normalInverseGamma.ts';

/** Believed as one observation's worth: the prior of the example below. */
const prior: Believed = { mean: 1.9, weight: 1, shape: 0.5, rate: 0.005 };
/** Wing lengths of nine midges, in mm. */
const midges = [1.64, 1.7, 1.72, 1.74, 1.82, 1.82, 1.82, 1.9, 2.08];

describe('a belief after some observations', () => {
  it('is that of a worked example', () => {
    // Hoff, A First Course in Bayesian Statistical Methods, section 5.3: prior mean 1.9, variance 0.01, one observation
    // each; after nine midges mean 1.814, variance 0.015, each of ten (values from memory).
    const { mean, weight, shape, rate } = updated(prior, midges);
    expect([weight, shape]).toEqual([10, 5]);
    expect(mean).toBeCloseTo(1.814, 3);
    expect(rate / shape).toBeCloseTo(0.0153, 4);
  });

  it('is the same whether they come at once or one after the other', () => {
    const [atOnce, oneByOne] = [updated(prior, midges), midges.reduce((now, one) => updated(now, [one]), prior)];
    for (const figure of ['mean', 'weight', 'shape', 'rate'] as const)
      expect(oneByOne[figure]).toBeCloseTo(atOnce[figure], 12);
  });

  it('is as it was without any', () => {
    expect(updated(prior, [])).toBe(prior);
  });
});

describe('what is told from it', () => {
  const believed: Believed = { mean: 2, weight: 4, shape: 3, rate: 12 };

  it('is the next observation, and more closely the mean itself', () => {
    // Gelman et al., Bayesian Data Analysis, section 3.3 (from memory): variance 12 ÷ 3, over four for the mean.
    expect(nextOne(believed)).toEqual({ middle: 2, scale: Math.sqrt(4 * (1 + 1 / 4)), dof: 6 });
    expect(meanOf(believed)).toEqual({ middle: 2, scale: 1, dof: 6 });
  });

  it('keeps its middle and its spread where it is known no better than by so many observations', () => {
    expect(knownNoBetterThan(believed, 2)).toEqual({ mean: 2, weight: 2, shape: 1, rate: 4 });
    expect(knownNoBetterThan(believed, 6)).toEqual(believed);
  });
});
