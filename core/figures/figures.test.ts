import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clopperPearson, garwood, rateOf, wilson } from './interval.ts';
import { type QuantileType, quantile } from './quantile.ts';
import { incompleteBeta, lowerGamma, normalBelow } from './specialFunctions.ts';
import { rateVerdict, shareVerdict, WIDEST } from './verdict.ts';

const aShare = fc
  .integer({ min: 1, max: 400 })
  .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));
const aConfidence = fc.constantFrom(0.5, 0.8, 0.9, 0.95, 0.99);

describe('intervals', () => {
  it('hold the share itself, lie between 0 and 1, and turn round with the question', () => {
    fc.assert(
      fc.property(aShare, aConfidence, ([count, of], confidence) => {
        for (const method of [wilson, clopperPearson]) {
          const { low, high } = method(count, of, confidence);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low).toBeLessThanOrEqual(count / of + 1e-12);
          expect(high).toBeGreaterThanOrEqual(count / of - 1e-12);
          const turned = method(of - count, of, confidence);
          expect(turned.low).toBeCloseTo(1 - high, 10);
          expect(turned.high).toBeCloseTo(1 - low, 10);
        }
      }),
    );
  });
  it('widen with the confidence, and narrow with the number', () => {
    fc.assert(
      fc.property(aShare, ([count, of]) => {
        const width = (c: number, n: number, confidence: number) => {
          const { low, high } = clopperPearson(c, n, confidence);
          return high - low;
        };
        expect(width(count, of, 0.9)).toBeLessThan(width(count, of, 0.99));
        expect(width(count * 4, of * 4, 0.95)).toBeLessThan(width(count, of, 0.95));
      }),
    );
  });
  it('of Clopper and Pearson cover at least what they say, counted over every outcome', () => {
    const of = 25;
    const limits = Array.from({ length: of + 1 }, (_, count) => clopperPearson(count, of));
    for (const p of [0.01, 0.08, 0.2, 0.37, 0.5, 0.83, 0.96]) {
      const chance = (count: number) =>
        incompleteBeta(1 - p, of - count, count + 1) - (count === 0 ? 0 : incompleteBeta(1 - p, of - count + 1, count));
      const covered = limits.reduce(
        (sum, { low, high }, count) => (low <= p && p <= high ? sum + (count === of ? p ** of : chance(count)) : sum),
        0,
      );
      expect(covered).toBeGreaterThanOrEqual(0.95 - 1e-9);
    }
  });
  it('are refused for what is no share', () => {
    for (const [count, of] of [
      [1, 0],
      [3, 2],
      [-1, 5],
      [0.5, 2],
    ] as const)
      expect(() => wilson(count, of)).toThrow(RangeError);
    expect(() => clopperPearson(1, 2, 1)).toThrow(RangeError);
    expect(() => garwood(1.5)).toThrow(RangeError);
    expect(() => rateOf(1, 0)).toThrow(RangeError);
  });
});

describe('special functions', () => {
  it('meet their closed forms', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1, noNaN: true, maxExcluded: true }),
        fc.integer({ min: 1, max: 60 }),
        (x, n) => {
          expect(incompleteBeta(x, n, 1)).toBeCloseTo(x ** n, 12);
          expect(incompleteBeta(x, 1, n)).toBeCloseTo(1 - (1 - x) ** n, 12);
          expect(lowerGamma(1, x * n)).toBeCloseTo(1 - Math.exp(-x * n), 12);
          expect(normalBelow(x) + normalBelow(-x)).toBeCloseTo(1, 14);
        },
      ),
    );
  });
});

describe('quantiles', () => {
  const types: readonly QuantileType[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  const someData = fc.array(fc.integer({ min: -1_000, max: 1_000 }), { minLength: 1, maxLength: 60 });
  const aShareOf1 = fc.double({ min: 0, max: 1, noNaN: true });
  it('stay within the data and never fall as the share rises, by every definition', () => {
    fc.assert(
      fc.property(someData, aShareOf1, aShareOf1, fc.constantFrom(...types), (data, p, q, type) => {
        const [low, high] = [Math.min(p, q), Math.max(p, q)].map(
          (share) => quantile(data, share, type) ?? Number.NaN,
        ) as [number, number];
        expect(low).toBeLessThanOrEqual(high + 1e-9);
        expect(low).toBeGreaterThanOrEqual(Math.min(...data) - 1e-9);
        expect(high).toBeLessThanOrEqual(Math.max(...data) + 1e-9);
      }),
    );
  });
  it('do not trip over 0.1 × 30: the third of thirty is the third', () => {
    expect(
      quantile(
        Array.from({ length: 30 }, (_, index) => index + 1),
        0.1,
        1,
      ),
    ).toBe(3);
  });
  it('of nothing are nothing, and a share above 1 is a defect', () => {
    expect(quantile([], 0.5)).toBeUndefined();
    expect(() => quantile([1], 1.1)).toThrow(RangeError);
    expect(() => quantile([Number.NaN], 0.5)).toThrow(RangeError);
  });
});

describe('what the shop’s few figures can say', () => {
  it('two of three failed boards of one family are too few to say', () => {
    expect(shareVerdict(2, 3, 0.2).says).toBe('too-few-to-say');
  });
  it('thirty of forty against one in five are more often; none of forty are less', () => {
    expect(shareVerdict(30, 40, 0.2).says).toBe('more-often');
    expect(shareVerdict(0, 40, 0.2).says).toBe('less-often');
  });
  it('a count without the number exposed is only a count', () => {
    expect(shareVerdict(12, null, 0.2)).toEqual({ says: 'count-only', count: 12 });
    expect(rateVerdict(12, null, 0.1)).toEqual({ says: 'count-only', count: 12 });
  });
  it('without others to hold it against, an interval wider than a quarter is too few', () => {
    expect(shareVerdict(5, 10, null).says).toBe('too-few-to-say');
    expect(shareVerdict(50, 100, null).says).toBe('about-so-often');
    expect(WIDEST).toBe(0.25);
  });
  it('says more or less often only when the interval leaves the others out', () => {
    fc.assert(
      fc.property(aShare, fc.double({ min: 0, max: 1, noNaN: true }), ([count, of], others) => {
        const verdict = shareVerdict(count, of, others);
        if (verdict.says === 'count-only') throw new Error('the number exposed was given');
        const holds = verdict.interval.low <= others && others <= verdict.interval.high;
        expect(verdict.says === 'too-few-to-say').toBe(holds);
      }),
    );
  });
});
