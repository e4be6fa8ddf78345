import table from '../../assets/money/iso4217.json' with { type: 'json' };
import type { Currency } from './money.ts';

/** Digits after the point of a currency's amounts, as ISO 4217 lists them. */
export type MinorDigits = 0 | 2 | 3 | 4;

const DIGITS: ReadonlyMap<string, MinorDigits> = new Map(
  Object.entries(table.digits).flatMap(([digits, codes]) =>
    codes.map((code) => [code, Number(digits) as MinorDigits] as const),
  ),
);

/** Every currency an amount can be written in, in alphabetical order. */
export const CURRENCIES: readonly Currency[] = [...DIGITS.keys()].toSorted() as Currency[];

/**
 * Digits after the point, from the standard's own list, never from the platform's formatter.
 * @throws {RangeError} when the currency did not come through `currencyOf`: a defect.
 */
export function minorDigits(currency: Currency): MinorDigits {
  const digits = DIGITS.get(currency);
  if (digits === undefined) throw new RangeError(`${currency} is no active ISO 4217 currency with a minor unit`);
  return digits;
}
