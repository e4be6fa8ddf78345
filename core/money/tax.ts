import { type Brand, brand } from '../brand.ts';
import { add, money, subtract, total } from './arithmetic.ts';
import type { Currency, Money } from './money.ts';
import { type Rounding, roundFraction, toSafe } from './rounding.ts';

/** A tax rate in thousandths of a percent: 20 % is 20,000, 9.975 % is 9,975. */
export type TaxRate = Brand<number, 'TaxRate'>;

const WHOLE = 100_000n;

/** @throws {RangeError} for a rate below zero or finer than a thousandth of a percent. */
export function taxRate(percent: number): TaxRate {
  const rate = Math.round(percent * 1000);
  if (!(percent >= 0) || Math.abs(rate - percent * 1000) > 1e-6) throw new RangeError(`${percent} % is no tax rate`);
  return brand<TaxRate>()(rate);
}

/** How a shop prices and rounds; stated on the bill, because rounding per line and on the total can differ. */
export type TaxMethod = {
  readonly prices: 'tax-contained' | 'tax-on-top';
  readonly round: 'per-line' | 'per-total';
  readonly rounding: Rounding;
};

export type PricedLine = { readonly price: Money; readonly rate: TaxRate };
export type Taxed = { readonly net: Money; readonly tax: Money; readonly gross: Money };
export type TaxedBill = {
  /** In the order given. `null` where tax is rounded on the total only: no line has a tax of its own then. */
  readonly lines: readonly (Taxed | null)[];
  readonly byRate: readonly (Taxed & { readonly rate: TaxRate })[];
  readonly total: Taxed;
};

/**
 * Tax contained in an amount, or to be put on top of it, rounded to a whole minor unit.
 * `net + tax = gross` always; the amount given is never changed.
 */
export function taxed(price: Money, rate: TaxRate, method: Pick<TaxMethod, 'prices' | 'rounding'>): Taxed {
  const contained = method.prices === 'tax-contained';
  const share = BigInt(price.minor) * BigInt(rate);
  const tax = money(
    toSafe(roundFraction(share, contained ? WHOLE + BigInt(rate) : WHOLE, method.rounding)),
    price.currency,
  );
  return contained ? { net: subtract(price, tax), tax, gross: price } : { net: price, tax, gross: add(price, tax) };
}

/**
 * Net, tax and gross of a bill with lines at several rates. Per line: each line's tax is rounded and the totals are
 * their sums. Per total: prices are added up for each rate and its tax is rounded once.
 */
export function taxBill(lines: readonly PricedLine[], currency: Currency, method: TaxMethod): TaxedBill {
  const rates = [...new Set(lines.map((line) => line.rate))].toSorted((a, b) => b - a);
  const each = lines.map((line) => (method.round === 'per-line' ? taxed(line.price, line.rate, method) : null));
  const byRate = rates.map((rate) => {
    const prices = total(
      currency,
      lines.filter((line) => line.rate === rate).map((line) => line.price),
    );
    const ofRate = each.flatMap((line, index) => (line !== null && lines[index]?.rate === rate ? [line] : []));
    return { rate, ...(method.round === 'per-line' ? summed(currency, ofRate) : taxed(prices, rate, method)) };
  });
  return { lines: each, byRate, total: summed(currency, byRate) };
}

const summed = (currency: Currency, parts: readonly Taxed[]): Taxed => ({
  net: total(
    currency,
    parts.map((part) => part.net),
  ),
  tax: total(
    currency,
    parts.map((part) => part.tax),
  ),
  gross: total(
    currency,
    parts.map((part) => part.gross),
  ),
});
