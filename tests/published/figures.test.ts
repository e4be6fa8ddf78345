import { describe, expect, it } from 'vitest';
import { clopperPearson, garwood, type Interval, rateOf, wilson, zOf } from '../../core/figures/interval.ts';
import { type QuantileType, quantile } from '../../core/figures/quantile.ts';
import { incompleteBeta, logGamma, lowerGamma, normalBelow } from '../../core/figures/specialFunctions.ts';

const to = (digits: number, { low, high }: Interval) => [low.toFixed(digits), high.toFixed(digits)];

// Newcombe, Statistics in Medicine 17 (1998) 857–872, Table I, 95 %.
describe('intervals of a share (Newcombe 1998, Table I)', () => {
  it.each([
    [81, 263, '0.2553', '0.3662'],
    [15, 148, '0.0624', '0.1605'],
    [0, 20, '0.0000', '0.1611'],
    [1, 29, '0.0061', '0.1718'],
  ])('Wilson, %i of %i: %s to %s', (count, of, low, high) => {
    expect(to(4, wilson(count, of))).toEqual([low, high]);
  });
  it.each([
    [81, 263, '0.2527', '0.3676'],
    [15, 148, '0.0578', '0.1617'],
    [0, 20, '0.0000', '0.1684'],
    [1, 29, '0.0009', '0.1776'],
  ])('Clopper–Pearson, %i of %i: %s to %s', (count, of, low, high) => {
    expect(to(4, clopperPearson(count, of))).toEqual([low, high]);
  });
  // The same cases to six digits, recomputed by scipy.
  it.each([
    [81, 263, ['0.255289', '0.366210'], ['0.252737', '0.367622']],
    [15, 148, ['0.062386', '0.160487'], ['0.057844', '0.161650']],
    [0, 20, ['0.000000', '0.161125'], ['0.000000', '0.168433']],
    [1, 29, ['0.006113', '0.171755'], ['0.000873', '0.177644']],
  ])('%i of %i to six digits', (count, of, score, exact) => {
    expect([to(6, wilson(count, of)), to(6, clopperPearson(count, of))]).toEqual([score, exact]);
  });
});

// Fagerland, Lydersen & Laake, Statistical Analysis of Contingency Tables (2017), ch. 2, 13 of 16.
describe('intervals of a share (Fagerland, Lydersen & Laake 2017, ch. 2)', () => {
  it('13 of 16: Wilson 0.5699–0.9341, Clopper–Pearson 0.5435–0.9595', () => {
    expect(to(4, wilson(13, 16))).toEqual(['0.5699', '0.9341']);
    expect(to(4, clopperPearson(13, 16))).toEqual(['0.5435', '0.9595']);
  });
  it('none or all of 10: Wilson 0.2775 and 0.7225; Clopper–Pearson has closed forms', () => {
    expect(to(4, wilson(0, 10))).toEqual(['0.0000', '0.2775']);
    expect(to(4, wilson(10, 10))).toEqual(['0.7225', '1.0000']);
    expect(clopperPearson(0, 10).high).toBeCloseTo(1 - 0.025 ** (1 / 10), 12);
    expect(clopperPearson(10, 10).low).toBeCloseTo(0.025 ** (1 / 10), 12);
  });
  // Hanley & Lippman-Hand, JAMA 249 (1983) 1743 (from memory, recomputed): one-sided 95 % for none of n.
  it.each([
    [10, 0.258866],
    [30, 0.095034],
    [50, 0.058155],
    [100, 0.029513],
    [300, 0.009936],
  ])('none of %i: at most %d, about three in that many', (of, high) => {
    expect(clopperPearson(0, of, 0.9).high).toBeCloseTo(high, 6);
  });
});

// Garwood, Biometrika 28 (1936); counts 0–5 as quoted from P. Macdonald, 6–12 from a second table, 14/20/30 from J. Hanley.
describe('limits of a count (Garwood 1936)', () => {
  it.each([
    [0, '0.0000', '3.6889'],
    [1, '0.0253', '5.5716'],
    [2, '0.2422', '7.2247'],
    [3, '0.6187', '8.7673'],
    [4, '1.0899', '10.2416'],
    [5, '1.6235', '11.6683'],
    [6, '2.2019', '13.0595'],
    [7, '2.8144', '14.4227'],
    [8, '3.4538', '15.7632'],
    [9, '4.1154', '17.0848'],
    [10, '4.7954', '18.3904'],
    [11, '5.4912', '19.6820'],
    [12, '6.2006', '20.9616'],
  ])('%i: %s to %s', (count, low, high) => {
    expect(to(4, garwood(count))).toEqual([low, high]);
  });
  it.each([
    [14, '7.65', '23.49'],
    [20, '12.22', '30.89'],
    [30, '20.24', '42.83'],
  ])('%i: %s to %s', (count, low, high) => {
    expect(to(2, garwood(count))).toEqual([low, high]);
  });
  it.each([
    [0.998, '2.96', '24.13'],
    [0.99, '3.72', '21.40'],
    [0.98, '4.13', '20.14'],
    [0.9, '5.43', '16.96'],
    [0.8, '6.22', '15.41'],
  ])('10 at %d: %s to %s', (confidence, low, high) => {
    expect(to(2, garwood(10, confidence))).toEqual([low, high]);
  });
  // R, survival::cipoisson, manual example: limits 1.089865 and 10.24153, and the tails it prints for them. Its upper limit
  // is not where the tail is 0.025 but, by its own print, 0.02500096; Garwood's table above has 10.2416 for 4 events.
  it('4 events: the tails at the printed limits are 0.02500096 and 0.02499961, a lower limit of 1.089865', () => {
    expect((1 - lowerGamma(5, 10.24153)).toFixed(8)).toBe('0.02500096');
    expect(lowerGamma(4, 1.08986).toFixed(8)).toBe('0.02499961');
    expect(garwood(4).low).toBeCloseTo(1.089865, 6);
    expect(1 - lowerGamma(5, garwood(4).high)).toBeCloseTo(0.025, 12);
  });
  it('14 events in 400 person-years: 0.019135 to 0.058724 a year', () => {
    expect(to(6, rateOf(14, 400))).toEqual(['0.019135', '0.058724']);
  });
  // Backblaze Drive Stats 2023 (0 failures in 52,876 drive-days); the limit is computed, not printed there.
  it('no failure in 52,876 drive-days: at most 2.5464 % a year', () => {
    expect((100 * rateOf(0, 52_876 / 365).high).toFixed(4)).toBe('2.5464');
    expect((100 * rateOf(0, 52_876 / 365, 0.9).high).toFixed(4)).toBe('2.0679');
  });
});

// Hyndman & Fan, American Statistician 50 (1996) 361; values as in NumPy's own test.
describe('quantiles (Hyndman & Fan 1996)', () => {
  it.each<[QuantileType, number]>([
    [1, 20],
    [2, 27.5],
    [3, 20],
    [4, 20],
    [5, 27.5],
    [6, 26],
    [7, 29],
    [8, 27],
    [9, 27.125],
  ])('of 15 20 35 40 50 at 0.40, type %i is %d', (type, value) => {
    expect(quantile([50, 15, 40, 20, 35], 0.4, type)).toBeCloseTo(value, 12);
  });
  it('of 1 to 24 at 0.9 are 21.7 by type 7 and 22 by nearest rank', () => {
    const data = Array.from({ length: 24 }, (_, index) => index + 1);
    expect(quantile(data, 0.9)).toBeCloseTo(21.7, 12);
    expect(quantile(data, 0.9, 1)).toBe(22);
  });
  // Times between failures: Proschan 1963; Davison & Hinkley 1997. Quantiles recomputed.
  it('of the twelve times between failures of an air-conditioner', () => {
    const times = [3, 5, 7, 18, 43, 85, 91, 98, 100, 130, 230, 487];
    const at = (type: QuantileType) =>
      [0.1, 0.25, 0.5, 0.75, 0.9].map((p) => Number(quantile(times, p, type)?.toFixed(10)));
    expect(at(7)).toEqual([5.2, 15.25, 88, 107.5, 220]);
    expect(at(6)).toEqual([3.6, 9.75, 88, 122.5, 409.9]);
  });
});

describe('what the intervals stand on', () => {
  // Any table of the normal distribution; from memory, well known to these digits.
  it('z is 1.644854, 1.959964 and 2.575829 for 90, 95 and 99 %', () => {
    expect([zOf(0.9), zOf(0.95), zOf(0.99)].map((z) => z.toFixed(6))).toEqual(['1.644854', '1.959964', '2.575829']);
    expect(normalBelow(0.566947)).toBeCloseTo(0.714625, 6);
  });
  // NIST/SEMATECH e-Handbook 8.2.5, printed output: G(0.001667) and G(0.004) for a = 2.863, b = 1522.46.
  it('the gamma distribution is 0.5001232 and 0.9499963 there', () => {
    expect(lowerGamma(2.863, 1522.46 * 0.001667)).toBeCloseTo(0.5001232, 7);
    expect(lowerGamma(2.863, 1522.46 * 0.004)).toBeCloseTo(0.9499963, 7);
  });
  it('ln Γ gives the factorials', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n += 1) {
      factorial *= n;
      expect(logGamma(n + 1) - Math.log(factorial)).toBeCloseTo(0, 12);
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 12);
  });
  it('the beta distribution is the binomial tail: 13 or more of 16 at one half', () => {
    expect(incompleteBeta(0.5, 13, 4)).toBeCloseTo((560 + 120 + 16 + 1) / 65_536, 14);
  });
});
