import { partId } from '../../ids.ts';
import type { ChargeLine } from '../../job/money/chargeLine.ts';
import { charges } from '../../job/money/charges.ts';
import { type TaxedCharge, taxedCharges } from '../../job/money/taxedCharges.ts';
import { money } from '../../money/arithmetic.ts';
import type { Currency, Money } from '../../money/money.ts';
import type { TaxTerms } from '../../money/taxTerms.ts';
import type { Making } from '../making.ts';
import { partName } from '../worded.ts';

export type BilledLine = {
  readonly of: TaxedCharge['of'] | { readonly is: 'free' };
  /** With the tax in it, unless the tax is a line of its own. */
  readonly amount: Money;
  /** Null where tax is rounded on the total only. */
  readonly tax: Money | null;
};
export type Billed = {
  readonly lines: readonly BilledLine[];
  readonly total: Money;
  readonly tax: Money;
  /** Where there are several rates, or tax is rounded on the total: what each comes to. */
  readonly byRate: readonly { readonly permille: number; readonly net: Money; readonly tax: Money }[];
};

/** Does the job go, or has it gone, home as it came? */
export const isAsItCame = ({ job }: Making): boolean => job.stages.some((one) => one.stage === 'home-as-it-came');

/** The terms that were agreed to; a job taken in before they were kept goes by the shop's of today. */
export const termsOf = ({ job, settings }: Making): { readonly currency: Currency; readonly tax: TaxTerms } =>
  job.terms ?? settings;

/** Said on the bill even though it costs nothing: what was fitted, and what was given. */
const isSaid = (line: ChargeLine): boolean =>
  line.minor !== 0 || line.is === 'given' || (line.is === 'item' && line.part !== null);

/**
 * What the ledger charges, line by line with its tax. A job free of charge says what it would have cost and takes all
 * of it off again. The total is the ledger's to the minor unit.
 */
export function billed(making: Making): Billed {
  const { job } = making;
  const terms = termsOf(making);
  const taxed = taxedCharges(charges(job, isAsItCame(making)).lines.filter(isSaid), terms);
  const of = (minor: number) => money(minor, terms.currency);
  const { gross, tax } = taxed.total;
  const perLine = terms.tax.round !== 'per-total';
  const lines = taxed.lines.map(
    (line): BilledLine => ({ of: line.of, amount: of(line.gross), tax: line.tax === null ? null : of(line.tax) }),
  );
  if (job.charging === 'free') {
    const off: BilledLine = { of: { is: 'free' }, amount: of(-gross), tax: perLine ? of(-tax) : null };
    return { lines: gross === 0 && tax === 0 ? lines : [...lines, off], total: of(0), tax: of(0), byRate: [] };
  }
  const several = taxed.byRate.length > 1 || !perLine;
  return {
    lines,
    total: of(gross),
    tax: of(tax),
    byRate: several ? taxed.byRate.map((one) => ({ permille: one.permille, net: of(one.net), tax: of(one.tax) })) : [],
  };
}

/** What a line that is no part and no labour by the minute is called. */
export function lineWords(making: Making, { of }: BilledLine): string {
  const { words, view, format } = making;
  const { bill } = words.facts;
  switch (of.is) {
    case 'labour':
      return bill.work;
    case 'item': {
      const part = of.part === null ? undefined : view.parts.get(partId(of.part));
      const what = part ? partName(making, part) : of.what;
      return of.minor === 0 ? format.say(bill.forNothing, { what }) : what;
    }
    case 'finding-fee':
      return bill.findingFee;
    case 'old-part-back': {
      const part = view.parts.get(partId(of.part));
      return format.say(bill.oldPartBack, { part: part ? partName(making, part) : of.part });
    }
    case 'given':
      return format.say(bill.given, {
        what: of.what,
        worth: format.money(money(of.worthMinor, termsOf(making).currency)),
      });
    case 'discount':
      return format.say(bill.discount, { why: of.why });
    case 'storage':
      return format.say(bill.storage, { n: of.days });
    case 'tax':
      return format.say(bill.taxLine, { rate: format.number(of.permille / 10) });
    case 'free':
      return bill.free;
  }
}
