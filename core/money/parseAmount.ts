import { minorDigits } from './minorDigits.ts';
import type { Currency, Money } from './money.ts';

export type AmountRefusal =
  | { readonly refused: 'amount-not-a-number'; readonly text: string }
  | { readonly refused: 'amount-negative'; readonly text: string }
  | { readonly refused: 'amount-grouping'; readonly text: string; readonly decimal: string; readonly group: string }
  | { readonly refused: 'amount-too-fine'; readonly text: string; readonly currency: Currency; readonly takes: number }
  | { readonly refused: 'amount-too-large'; readonly text: string };

/**
 * Reads an amount as a person of a locale types it: `1,234.50`, `1.234,50 €`, `1 234,50`, `CLP 24.000`.
 * Nothing is guessed: wrong grouping (`12,34` where the comma groups) and more digits than the currency has are refused.
 */
export function parseAmount(text: string, currency: Currency, locale: string): Money | AmountRefusal {
  const { decimal, group, digits, symbols } = habits(locale, currency);
  let plain = text.trim();
  for (const symbol of symbols) plain = plain.replace(symbol, '');
  plain = plain
    .replace(/[\s\u00a0\u202f\u2009]/g, ' ')
    .replace(/[’ʼ]/g, "'")
    .replace(/[−–]/g, '-')
    .trim();
  plain = [...plain].map((character) => (digits.has(character) ? String(digits.get(character)) : character)).join('');
  if (plain.startsWith('-') && /\d/.test(plain)) return { refused: 'amount-negative', text };
  const [whole = '', fraction, ...more] = plain.split(decimal);
  if (
    more.length > 0 ||
    ![...plain].every((sign) => /\d/.test(sign) || [decimal, group, '.', ',', "'", ' '].includes(sign)) ||
    !/\d/.test(plain)
  )
    return { refused: 'amount-not-a-number', text };
  if (fraction !== undefined && !/^\d+$/.test(fraction)) return { refused: 'amount-grouping', text, decimal, group };
  // Last group of three, those before it of three or, as in India, of two.
  if (!/^\d*$/.test(whole) && !wellGrouped(whole, group)) return { refused: 'amount-grouping', text, decimal, group };
  const takes = minorDigits(currency);
  if ((fraction ?? '').length > takes) return { refused: 'amount-too-fine', text, currency, takes };
  const minor = Number(whole.replace(/\D/g, '') + (fraction ?? '').padEnd(takes, '0'));
  return Number.isSafeInteger(minor) ? { minor, currency } : { refused: 'amount-too-large', text };
}

function wellGrouped(whole: string, group: string): boolean {
  const parts = whole.split(group);
  const [first = '', ...rest] = parts;
  const last = rest.at(-1);
  const middle = rest.slice(0, -1);
  return (
    /^\d{1,3}$/.test(first) &&
    last?.length === 3 &&
    parts.every((part) => /^\d+$/.test(part)) &&
    middle.every((part) => part.length === 2 || part.length === 3)
  );
}

/** How a locale writes numbers: its decimal and group signs, its digits, and what may stand around an amount. */
function habits(locale: string, currency: Currency) {
  const plain = new Intl.NumberFormat(locale, { minimumFractionDigits: 1 });
  const parts = plain.formatToParts(1_234_567.8);
  const sign = (type: 'decimal' | 'group') => parts.find((part) => part.type === type)?.value ?? '';
  const group = sign('group')
    .replace(/[\u00a0\u202f\u2009]/, ' ')
    .replace('’', "'");
  const digits = new Map(
    Array.from({ length: 10 }, (_, digit) => [
      new Intl.NumberFormat(locale, { useGrouping: false }).format(digit),
      digit,
    ]),
  );
  const symbols = (['symbol', 'narrowSymbol', 'code'] as const).flatMap((currencyDisplay) =>
    new Intl.NumberFormat(locale, { style: 'currency', currency, currencyDisplay })
      .formatToParts(1)
      .filter((part) => part.type === 'currency')
      .map((part) => part.value),
  );
  return {
    decimal: sign('decimal') || '.',
    group,
    digits,
    symbols: [...new Set(symbols)].toSorted((a, b) => b.length - a.length),
  };
}
