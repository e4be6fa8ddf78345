import { dayOf } from '../calendar.ts';
import { money, subtract } from '../money/arithmetic.ts';
import type { CsvCell } from '../money/csv.ts';
import { decimalOf } from '../money/formatMoney.ts';
import type { Money } from '../money/money.ts';
import { type BilledLine, billed, lineWords, termsOf } from './lines/billed.ts';
import type { Making } from './making.ts';

/** The columns of the bookkeeping table, in order. Names are for machines and stay in every language. */
export const COLUMNS = [
  'date',
  'bill',
  'machine',
  'line',
  'kind',
  'what',
  'tax_rate_percent',
  'net',
  'tax',
  'gross',
  'currency',
] as const;

const text = (value: string): CsvCell => ({ text: value });
const figure = (value: Money | null): CsvCell => ({ figure: value === null ? '' : decimalOf(value) });

/**
 * A bill as rows: one for each of its lines, one for each rate where tax is said by rate, one for each payment. The
 * `gross` of the lines adds up to the bill; rates (`rate`) and payments (`payment`) stand beside it and have none of
 * their own but what was paid. Amounts with a point and the digits of ISO 4217; dates as ISO 8601, in the shop's zone.
 * Nobody's name is in it.
 */
export function bookkeepingRows(making: Making): readonly (readonly CsvCell[])[] {
  const { job, settings, number } = making;
  const bill = billed(making);
  const { currency, tax } = termsOf(making);
  const day = (at: number) => dayOf(at, settings.zone);
  const date = day(job.handover?.at ?? making.asking.at);
  const row = (of: string, line: number, kind: string, what: string, cells: readonly CsvCell[]) => [
    text(of),
    text(number),
    text(job.tag),
    { figure: String(line) },
    text(kind),
    text(what),
    ...cells,
    text(currency),
  ];
  const lines = bill.lines.map((line, at) =>
    row(date, at + 1, line.of.is, lineWords(making, line), [
      { figure: line.tax === null || line.of.is === 'free' ? '' : percent(line, tax.permille) },
      figure(line.tax && subtract(line.amount, line.tax)),
      figure(line.tax),
      figure(line.amount),
    ]),
  );
  const rates = bill.byRate.map((one, at) =>
    row(date, at + 1, 'rate', '', [
      { figure: String(one.permille / 10) },
      figure(one.net),
      figure(one.tax),
      { figure: '' },
    ]),
  );
  // What was written down wrongly stands there as it was, and goes out again on the day it was struck.
  const paid = job.paid.flatMap((one, i) => [
    { ...one, nth: i + 1 },
    ...(one.struck ? [{ ...one, minor: -one.minor, at: one.struck.at, nth: i + 1 }] : []),
  ]);
  const payments = paid.map((one) =>
    row(day(one.at), one.nth, 'payment', one.how, [
      { figure: '' },
      { figure: '' },
      { figure: '' },
      figure(money(one.minor, currency)),
    ]),
  );
  return [...lines, ...rates, ...payments];
}

const percent = ({ of }: BilledLine, usual: number): string =>
  String((('taxPermille' in of ? of.taxPermille : null) ?? usual) / 10);
