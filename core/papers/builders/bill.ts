import type { Money } from '../../money/money.ts';
import type { EpochMs, Minutes } from '../../time.ts';
import { items, joined, says, strongly, table } from '../blocks.ts';
import type { Block, Sheet } from '../content.ts';
import type { CommonFacts, Condition } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { machineLine, sheet } from '../sheet.ts';

/** A line of the bill. Amount with tax in it; `tax` is the part of it that is tax. */
export type BillLine = { readonly amount: Money; readonly tax: Money } & (
  | { readonly is: 'work'; readonly minutes: Minutes; readonly rate: Money }
  | { readonly is: 'part'; readonly what: string; readonly condition: Condition }
  | { readonly is: 'other'; readonly what: string }
);

/**
 * Given for every job, even when nothing is charged. Its fields are those of 16 CCR 2725 (California) and of s. 185
 * of Québec's Consumer Protection Act (P-40.1): both parties, the machine, the owner's description, what was done,
 * each part with its class and price, work by time and rate, tax, total, warranty, who did it.
 */
export type BillFacts = CommonFacts & {
  readonly told: string;
  readonly done: readonly string[];
  readonly lines: readonly BillLine[];
  readonly total: Money;
  readonly taxTotal: Money;
  /** The rate as the shop prints it, and whether it is contained: `20 % contained in every line`. */
  readonly taxSays: string;
  readonly limit?: Money;
  readonly toldBefore?: { readonly from: Money; readonly to: Money };
  readonly findingFee?: { readonly amount: Money; readonly credited: boolean };
  readonly paid?: { readonly at: EpochMs; readonly how: string };
  readonly warranty: readonly string[];
  readonly workBy: readonly string[];
};

/** @throws when the lines do not add up to the total: a bill that does not add up is a defect, never a paper. */
export function bill(facts: BillFacts, setting: Setting): Sheet {
  addsUp(facts);
  const format = formatFor(setting);
  const words = setting.words.kinds.bill;
  const { owner, machine, total, taxTotal, limit, paid, findingFee } = facts;
  const before = facts.toldBefore;
  return sheet('bill', facts, setting, format, {
    lead: joined(
      total.minor === 0
        ? words.leadNothing
        : format.say(words.lead, { total: format.money(total), tax: format.money(taxTotal) }),
      limit &&
        total.minor > 0 &&
        total.minor <= limit.minor &&
        format.say(words.leadLimit, { limit: format.money(limit) }),
      paid && format.say(words.leadPaid, { day: format.date(paid.at), how: paid.how }),
    ),
    body: [
      { label: words.to, blocks: says([owner.name, ...(owner.address ?? [])].join(', ')) },
      {
        label: words.machine,
        blocks: says(machineLine(machine, setting, format)),
      },
      { label: words.told, blocks: says(format.say(setting.words.common.quoted, { text: facts.told })) },
      { label: words.done, blocks: items(facts.done) },
      { label: words.items, wide: true, blocks: charged(facts, setting, format) },
      { label: words.usedPart, blocks: says(usedParts(facts, setting, format)) },
      {
        label: words.fee,
        blocks: says(
          findingFee?.credited && format.say(words.feeCredited, { amount: format.money(findingFee.amount) }),
        ),
      },
      {
        label: words.before,
        blocks: says(
          before &&
            limit &&
            format.say(words.beforeText, {
              from: format.money(before.from),
              to: format.money(before.to),
              limit: format.money(limit),
            }),
        ),
      },
      { label: words.taxes, blocks: says(facts.taxSays) },
      { label: words.warranty, blocks: items(facts.warranty) },
      { label: words.by, blocks: says(format.list(facts.workBy)) },
    ],
  });
}

function charged({ lines, total, taxTotal }: BillFacts, setting: Setting, format: Format): Block[] {
  const { common } = setting.words;
  const words = setting.words.kinds.bill;
  const what = (line: BillLine) => {
    switch (line.is) {
      case 'work':
        return format.say(words.labour, { minutes: format.minutesWhole(line.minutes), rate: format.money(line.rate) });
      case 'part':
        return format.say(words.part, { what: line.what, condition: common.condition[line.condition] });
      case 'other':
        return line.what;
    }
  };
  return table(
    words.summary,
    [
      { head: words.what, share: 62 },
      { head: words.tax, share: 16, align: 'right' },
      { head: words.amount, share: 18, align: 'right' },
    ],
    [
      ...lines.map((line) => ({ cells: [what(line), format.money(line.tax), format.money(line.amount)] })),
      { cells: [words.totalRow, format.money(taxTotal), format.money(total)], strong: true as const },
    ],
  );
}

function usedParts({ lines }: BillFacts, setting: Setting, format: Format) {
  const words = setting.words.kinds.bill;
  const parts = lines.filter((line) => line.is === 'part');
  const used = parts.filter((part) => part.condition !== 'new');
  if (parts.length === 0) return undefined;
  return used.length === 0
    ? words.usedNone
    : strongly(
        used
          .map(
            (part) => `${part.what} (${setting.words.common.condition[part.condition]}), ${format.money(part.amount)}`,
          )
          .join('; '),
      );
}

function addsUp({ lines, total, taxTotal }: BillFacts): void {
  const sum = (of: 'amount' | 'tax') => lines.reduce((minor, line) => minor + line[of].minor, 0);
  if (sum('amount') !== total.minor || sum('tax') !== taxTotal.minor) {
    throw new Error(
      `The bill's lines come to ${sum('amount')} (tax ${sum('tax')}), not to ${total.minor} (tax ${taxTotal.minor}).`,
    );
  }
  if (lines.some((line) => line.amount.currency !== total.currency)) throw new Error('A bill is in one currency.');
}
