import { minorDigits } from './minorDigits.ts';
import type { Currency, Money } from './money.ts';
import { toSafe } from './rounding.ts';

/** Two currencies met in one sum: a defect, since a shop has one and no rate of exchange is kept. */
export class MixedCurrenciesError extends Error {
  override readonly name = 'MixedCurrenciesError';
  readonly currencies: readonly [Currency, Currency];
  constructor(a: Currency, b: Currency) {
    super(`${a} and ${b} cannot be added or compared`);
    this.currencies = [a, b];
  }
}

/**
 * An amount from whole minor units.
 * @throws {RangeError} for a fraction of a minor unit, or a currency without one.
 */
export function money(minor: number, currency: Currency): Money {
  minorDigits(currency);
  if (!Number.isSafeInteger(minor)) throw new RangeError(`${minor} is no whole number of minor units`);
  return { minor: minor === 0 ? 0 : minor, currency };
}

/** No money, in a currency. */
export const nothing = (currency: Currency): Money => money(0, currency);

/**
 * The sum of two amounts.
 * @throws {MixedCurrenciesError} for two currencies.
 * @throws {RangeError} past what can be counted exactly.
 */
export const add = (a: Money, b: Money): Money => exactly(a, b, (x, y) => x + y);

/**
 * The first amount less the second; it may be below zero.
 * @throws {MixedCurrenciesError} for two currencies.
 * @throws {RangeError} past what can be counted exactly.
 */
export const subtract = (a: Money, b: Money): Money => exactly(a, b, (x, y) => x - y);

/** The sum of the amounts; of none, nothing in that currency. */
export const total = (currency: Currency, amounts: readonly Money[]): Money => amounts.reduce(add, nothing(currency));

function exactly(a: Money, b: Money, by: (x: bigint, y: bigint) => bigint): Money {
  sameCurrency(a, b);
  return money(toSafe(by(BigInt(a.minor), BigInt(b.minor))), a.currency);
}

function sameCurrency(a: Money, b: Money): void {
  if (a.currency !== b.currency) throw new MixedCurrenciesError(a.currency, b.currency);
}
