import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, MixedCurrenciesError, money, nothing, subtract, total } from './arithmetic.ts';
import { currencyOf } from './currencyOf.ts';
import { decimalOf, formatMoney } from './formatMoney.ts';
import type { Currency, Money } from './money.ts';
import { ROUNDINGS, type Rounding, roundFraction } from './rounding.ts';
import { taxBill, taxed, taxRate } from './tax.ts';

const [GBP, EUR, CLP, KWD] = ['GBP', 'EUR', 'CLP', 'KWD'] as Currency[] as [Currency, Currency, Currency, Currency];
const pounds = (amount: string): Money => money(Math.round(Number(amount) * 100), GBP);
const anAmount = fc.integer({ min: -1_000_000_00, max: 1_000_000_00 }).map((minor) => money(minor, GBP));
const aRate = fc.integer({ min: 0, max: 30_000 }).map((thousandths) => taxRate(thousandths / 1000));
const aRounding = fc.constantFrom<Rounding>(...ROUNDINGS);

describe('amounts', () => {
  it('are added and taken away in one currency', () => {
    expect(add(pounds('144.00'), pounds('89'))).toEqual(pounds('233'));
    expect(subtract(pounds('30'), pounds('44.50')).minor).toBe(-14_50);
    expect(total(CLP, [])).toEqual(nothing(CLP));
  });
  it('of two currencies never meet', () => {
    for (const meet of [add, subtract]) expect(() => meet(money(1, GBP), money(1, EUR))).toThrow(MixedCurrenciesError);
  });
  it('are whole minor units', () => {
    expect(() => money(0.5, GBP)).toThrow(RangeError);
    expect(() => money(1, 'XAU' as Currency)).toThrow(RangeError);
    expect(() => add(money(Number.MAX_SAFE_INTEGER, GBP), money(1, GBP))).toThrow(RangeError);
  });
  it('know which codes are no money', () => {
    expect(currencyOf(' gbp ')).toBe('GBP');
    expect(currencyOf('XAU')).toEqual({ refused: 'currency-without-amounts', code: 'XAU' });
    expect(currencyOf('DEM')).toEqual({ refused: 'currency-unknown', code: 'DEM' });
  });
});

describe('tax', () => {
  const lines = (['144.00', '89.00', '7.50', '6.00'] as const).map((price) => ({
    price: pounds(price),
    rate: taxRate(20),
  }));
  it('contained in the demo bill is 41.08 of 246.50, line by line', () => {
    const bill = taxBill(lines, GBP, { prices: 'tax-contained', round: 'per-line', rounding: 'half-up' });
    expect(bill.lines.map((line) => line?.tax.minor)).toEqual([24_00, 14_83, 1_25, 1_00]);
    expect(bill.total).toEqual({ net: pounds('205.42'), tax: pounds('41.08'), gross: pounds('246.50') });
  });
  it('contained in a fee of 25,000 pesos at 19 % is 3,992', () => {
    expect(taxed(money(25_000, CLP), taxRate(19), { prices: 'tax-contained', rounding: 'half-up' })).toEqual({
      net: money(21_008, CLP),
      tax: money(3_992, CLP),
      gross: money(25_000, CLP),
    });
  });
  it('at several rates is kept apart by rate, the highest first', () => {
    const mixed = [
      { price: pounds('10'), rate: taxRate(5) },
      { price: pounds('10'), rate: taxRate(20) },
      { price: pounds('10'), rate: taxRate(5) },
    ];
    const bill = taxBill(mixed, GBP, { prices: 'tax-on-top', round: 'per-line', rounding: 'half-up' });
    expect(bill.byRate.map(({ rate, tax }) => [rate, tax.minor])).toEqual([
      [20_000, 2_00],
      [5_000, 1_00],
    ]);
    expect(bill.total.gross).toEqual(pounds('33'));
  });
  it('knows rates as fine as 9.975 %, and refuses finer ones and those below zero', () => {
    expect(taxRate(9.975)).toBe(9_975);
    expect(() => taxRate(-1)).toThrow(RangeError);
    expect(() => taxRate(9.97501)).toThrow(RangeError);
    expect(() => taxRate(Number.NaN)).toThrow(RangeError);
  });
  it('adds up under every way of pricing and rounding: net and tax make gross, lines make the total', () => {
    const bill = fc.array(fc.record({ price: anAmount, rate: aRate }), { maxLength: 12 });
    fc.assert(
      fc.property(
        bill,
        fc.constantFrom('tax-contained', 'tax-on-top'),
        fc.constantFrom('per-line', 'per-total'),
        aRounding,
        (entries, prices, round, rounding) => {
          const result = taxBill(entries, GBP, { prices, round, rounding });
          for (const { net, tax, gross } of [result.total, ...result.byRate]) expect(add(net, tax)).toEqual(gross);
          const given = total(
            GBP,
            entries.map(({ price }) => price),
          );
          expect(prices === 'tax-contained' ? result.total.gross : result.total.net).toEqual(given);
          if (round === 'per-line') {
            expect(result.lines.reduce((sum, line) => sum + (line?.tax.minor ?? 0), 0)).toBe(result.total.tax.minor);
            expect(result.lines.reduce((sum, line) => sum + (line?.gross.minor ?? 0), 0)).toBe(
              result.total.gross.minor,
            );
          } else expect(result.lines.every((line) => line === null)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
  it('contained is what tax on top of the net would be, to within a minor unit', () => {
    fc.assert(
      fc.property(anAmount, aRate, (gross, rate) => {
        const { net, tax } = taxed(gross, rate, { prices: 'tax-contained', rounding: 'half-up' });
        const back = taxed(net, rate, { prices: 'tax-on-top', rounding: 'half-up' });
        expect(Math.abs(back.tax.minor - tax.minor)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('rounding', () => {
  it('is never off by a whole unit, and mirrors at zero', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n }),
        fc.bigInt({ min: 1n, max: 10n ** 6n }),
        aRounding,
        (numerator, denominator, rounding) => {
          const rounded = roundFraction(numerator, denominator, rounding);
          const off = rounded * denominator - numerator;
          expect(off > -denominator && off < denominator).toBe(true);
          expect(roundFraction(-numerator, denominator, rounding)).toBe(-rounded);
        },
      ),
    );
  });
});

describe('an amount on paper', () => {
  it('is written as the locale does, with the standard’s digits', () => {
    const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
    expect(formatMoney(pounds('1234.5'), 'en-GB')).toBe('£1,234.50');
    expect(plain(formatMoney(money(1_234_50, EUR), 'de-DE'))).toBe('1.234,50 €');
    expect(plain(formatMoney(money(24_000, CLP), 'es-CL'))).toBe('$24.000');
    expect(plain(formatMoney(money(1_500, KWD), 'en'))).toBe('KWD 1.500');
  });
  it('is exact where a binary fraction would not be', () => {
    expect(decimalOf(money(9_007_199_254_740_991, GBP))).toBe('90071992547409.91');
    expect(formatMoney(money(9_007_199_254_740_991, GBP), 'en-GB')).toBe('£90,071,992,547,409.91');
    expect(decimalOf(money(-5, KWD))).toBe('-0.005');
  });
});
