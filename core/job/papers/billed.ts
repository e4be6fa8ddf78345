import type { PartId } from '../../ids.ts';
import { add, nothing, subtract, total } from '../../money/arithmetic.ts';
import type { Money } from '../../money/money.ts';
import { taxed, taxRate } from '../../money/tax.ts';
import { type ChargeLine, charges } from '../charges.ts';
import { amount } from './common.ts';
import type { Making } from './making.ts';
import { partName } from './worded.ts';

export type BilledLine = {
  readonly of: ChargeLine | { readonly is: 'free' };
  /** With the tax in it. */
  readonly amount: Money;
  readonly tax: Money;
};
export type Billed = { readonly lines: readonly BilledLine[]; readonly total: Money; readonly tax: Money };

/** Does the job go, or has it gone, home as it came? */
export const isAsItCame = ({ job }: Making): boolean => job.stages.some((one) => one.stage === 'home-as-it-came');

/**
 * What the ledger charges, line by line with its tax, rounded half up on each line. A job free of charge says what it
 * would have cost and takes all of it off again. Where prices contain the tax the total is the ledger's to the minor
 * unit; where it comes on top it is the ledger's and the tax.
 */
export function billed(making: Making): Billed {
  const { settings, job } = making;
  const rate = taxRate(settings.tax.permille / 10);
  const prices = settings.tax.inside ? ('tax-contained' as const) : ('tax-on-top' as const);
  const priced = charges(job, isAsItCame(making))
    .lines.filter((line) => line.minor !== 0)
    .map((line): BilledLine => {
      const { gross, tax } = taxed(amount(making, line.minor), rate, { prices, rounding: 'half-up' });
      return { of: line, amount: gross, tax };
    });
  const sum = (lines: readonly BilledLine[], of: 'amount' | 'tax') =>
    total(
      settings.currency,
      lines.map((line) => line[of]),
    );
  const zero = nothing(settings.currency);
  const free: readonly BilledLine[] =
    job.charging === 'free' && priced.length > 0
      ? [{ of: { is: 'free' }, amount: subtract(zero, sum(priced, 'amount')), tax: subtract(zero, sum(priced, 'tax')) }]
      : [];
  const lines = [...priced, ...free];
  return { lines, total: add(zero, sum(lines, 'amount')), tax: sum(lines, 'tax') };
}

/** What a line that is no part and no labour by the minute is called. */
export function lineWords(making: Making, { of }: BilledLine): string {
  const { words, view } = making;
  switch (of.is) {
    case 'labour':
      return words.facts.bill.work;
    case 'item': {
      const part = of.part === null ? undefined : view.parts.get(of.part as PartId);
      return part ? partName(making, part) : of.what;
    }
    case 'finding-fee':
      return words.facts.bill.findingFee;
    case 'free':
      return words.facts.bill.free;
  }
}
