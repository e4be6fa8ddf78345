import { minorDigits } from './minorDigits.ts';
import type { Money } from './money.ts';

/** An amount as a plain decimal with the standard's digits: `-12.50`, `1500`, `0.005`. Exact at any size. */
export function decimalOf({ minor, currency }: Money): string {
  const digits = minorDigits(currency);
  const plain = Math.abs(minor)
    .toString()
    .padStart(digits + 1, '0');
  const text = digits === 0 ? plain : `${plain.slice(0, -digits)}.${plain.slice(-digits)}`;
  return minor < 0 ? `-${text}` : text;
}

/**
 * An amount as people of a locale write it, with the digits of ISO 4217: the platform's own count of digits is wrong
 * for sixteen currencies (it prints HUF and IQD without any).
 */
export function formatMoney(amount: Money, locale: string): string {
  const digits = minorDigits(amount.currency);
  const writer = new Intl.NumberFormat(locale, {
    style: 'currency',
    currency: amount.currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  return writer.format(decimalOf(amount) as `${number}`);
}
