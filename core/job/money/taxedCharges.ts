import { money } from '../../money/arithmetic.ts';
import type { Currency } from '../../money/money.ts';
import { taxBill } from '../../money/tax.ts';
import { type TaxTerms, taxMethodOf, taxRateOf } from '../../money/taxTerms.ts';
import type { ChargeLine } from './chargeLine.ts';

/** A line with its tax. Where tax is rounded on the total only, no line has one, and tax on top is a line of its own. */
export type TaxedCharge = {
  readonly of: ChargeLine | { readonly is: 'tax'; readonly permille: number };
  readonly gross: number;
  readonly tax: number | null;
};

export type TaxedCharges = {
  readonly lines: readonly TaxedCharge[];
  /** Net, tax and gross at each rate, dearest rate first. */
  readonly byRate: readonly {
    readonly permille: number;
    readonly net: number;
    readonly tax: number;
    readonly gross: number;
  }[];
  readonly total: { readonly net: number; readonly tax: number; readonly gross: number };
};

/** Puts the tax to charges, in minor units, by the terms of the job. Without terms prices are what the owner pays. */
export function taxedCharges(
  charged: readonly ChargeLine[],
  terms: { readonly currency: Currency; readonly tax: TaxTerms } | null,
): TaxedCharges {
  if (!terms) return untaxed(charged);
  const { currency, tax } = terms;
  const permilleOf = (line: ChargeLine) => ('taxPermille' in line ? line.taxPermille : null) ?? tax.permille;
  const bill = taxBill(
    charged.map((line) => ({ price: money(line.minor, currency), rate: taxRateOf(permilleOf(line)) })),
    currency,
    taxMethodOf(tax),
  );
  const lines = charged.map((of, at): TaxedCharge => {
    const own = bill.lines[at];
    return own ? { of, gross: own.gross.minor, tax: own.tax.minor } : { of, gross: of.minor, tax: null };
  });
  const byRate = bill.byRate.map((one) => ({
    permille: one.rate / 100,
    net: one.net.minor,
    tax: one.tax.minor,
    gross: one.gross.minor,
  }));
  const onTop = tax.round === 'per-total' && !tax.inside ? byRate.filter((one) => one.tax !== 0) : [];
  return {
    lines: [
      ...lines,
      ...onTop.map(({ permille, tax: gross }) => ({ of: { is: 'tax' as const, permille }, gross, tax: null })),
    ],
    byRate,
    total: { net: bill.total.net.minor, tax: bill.total.tax.minor, gross: bill.total.gross.minor },
  };
}

function untaxed(charged: readonly ChargeLine[]): TaxedCharges {
  const gross = charged.reduce((sum, line) => sum + line.minor, 0);
  return {
    lines: charged.map((of) => ({ of, gross: of.minor, tax: null })),
    byRate: [],
    total: { net: gross, tax: 0, gross },
  };
}
