import table from '../../assets/money/iso4217.json' with { type: 'json' };
import { brand } from '../brand.ts';
import type { Currency } from './money.ts';

/** Digits after the point of a currency's amounts, as ISO 4217 lists them. */
const MINOR_DIGITS = [0, 2, 3, 4] as const;
export type MinorDigits = (typeof MINOR_DIGITS)[number];

/** The standard's list, where a currency begins. */
const DIGITS: ReadonlyMap<Currency, MinorDigits> = new Map(
  MINOR_DIGITS.flatMap((digits) => table.digits[digits].map((code) => [brand<Currency>()(code), digits] as const)),
);

/** Every currency an amount can be written in, in alphabetical order. */
export const CURRENCIES: readonly Currency[] = [...DIGITS.keys()].toSorted();

/**
 * Digits after the point, from the standard's own list, never from the platform's formatter.
 * @throws {RangeError} when the currency did not come through `currencyOf`: a defect.
 */
export function minorDigits(currency: Currency): MinorDigits {
  const digits = DIGITS.get(currency);
  if (digits === undefined) throw new RangeError(`${currency} is no active ISO 4217 currency with a minor unit`);
  return digits;
}
