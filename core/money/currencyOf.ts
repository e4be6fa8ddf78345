import table from '../../assets/money/iso4217.json' with { type: 'json' };
import { CURRENCIES } from './minorDigits.ts';
import type { Currency } from './money.ts';

export type CurrencyRefusal =
  | { readonly refused: 'currency-unknown'; readonly code: string }
  | { readonly refused: 'currency-without-amounts'; readonly code: string };

/** Reads an ISO 4217 alphabetic code. Refuses codes that are not active, and those without a minor unit (gold, test codes). */
export function currencyOf(code: string): Currency | CurrencyRefusal {
  const plain = code.trim().toUpperCase();
  const currency = CURRENCIES.find((known) => known === plain);
  return currency ?? { refused: table.none.includes(plain) ? 'currency-without-amounts' : 'currency-unknown', code };
}
