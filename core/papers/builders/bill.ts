import { subtract, total as sumOf } from '../../money/arithmetic.ts';
import type { Money } from '../../money/money.ts';
import type { EpochMs, Minutes } from '../../time.ts';
import { amounts, items, joined, says, strongly, table } from '../blocks.ts';
import type { Block, Sheet } from '../content.ts';
import type { CommonFacts, PartCondition, WordFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { howGiven, machineLine, sheet } from '../sheet.ts';

/**
 * A line of the bill. Amount with tax in it; `tax` is the part of it that is tax. Null where tax is rounded on the
 * total only: it is then said by rate, and is a line of its own where it comes on top.
 */
export type BillLine = { readonly amount: Money; readonly tax: Money | null } & (
  | { readonly is: 'work'; readonly minutes: Minutes; readonly rate: Money }
  | { readonly is: 'part'; readonly what: string; readonly condition: PartCondition }
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
  /** What went wrong at the shop's hands; none of it is charged. */
  readonly incidents?: readonly string[];
  readonly lines: readonly BillLine[];
  readonly total: Money;
  readonly taxTotal: Money;
  /** The rate as the shop prints it, and whether it is contained: `20 % contained in every line`. */
  readonly taxSays: string;
  readonly limit?: Money;
  readonly toldBefore?: { readonly from: Money; readonly to: Money };
  readonly findingFee?: { readonly amount: Money; readonly credited: boolean };
  readonly byRate?: readonly { readonly rate: string; readonly net: Money; readonly tax: Money }[];
  /** What was paid before and with the bill; what is still to pay is what is left. */
  readonly payments?: readonly {
    readonly what: string;
    readonly at: EpochMs;
    readonly how: string;
    readonly amount: Money;
  }[];
  /** Every word given on the way. 16 CCR 2722 asks for those given by telephone on the invoice. */
  readonly word?: readonly (WordFacts & { readonly says: string; readonly more?: Money })[];
  readonly warranty: readonly string[];
  readonly workBy: readonly string[];
};

/** @throws when the lines do not add up to the total: a bill that does not add up is a defect, never a paper. */
export function bill(facts: BillFacts, setting: Setting): Sheet {
  addsUp(facts);
  const format = formatFor(setting);
  const words = setting.words.kinds.bill;
  const { owner, machine, total, taxTotal, limit, findingFee } = facts;
  const paid = paidSoFar(facts);
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
      paid && leadPaid(facts, paid, setting, format),
    ),
    body: [
      { label: words.to, blocks: says([owner.name, ...(owner.address ?? [])].join(', ')) },
      {
        label: words.machine,
        blocks: says(machineLine(machine, setting, format)),
      },
      { label: words.told, blocks: says(format.say(setting.words.common.quoted, { text: facts.told })) },
      { label: words.done, blocks: items(facts.done) },
      { label: words.incidents, blocks: items(facts.incidents) },
      { label: words.items, wide: true, blocks: charged(facts, setting, format) },
      { label: words.payments, blocks: payments(facts, setting, format) },
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
      { label: words.taxes, blocks: [...says(facts.taxSays), ...rates(facts, setting, format)] },
      { label: words.word, blocks: items(ownersWord(facts, setting, format)) },
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
      ...lines.map((line) => ({
        cells: [what(line), line.tax ? format.money(line.tax) : '–', format.money(line.amount)],
      })),
      { cells: [words.totalRow, format.money(taxTotal), format.money(total)], strong: true as const },
    ],
  );
}

const paidSoFar = ({ payments = [], total }: BillFacts): Money | null =>
  payments.length === 0
    ? null
    : sumOf(
        total.currency,
        payments.map((one) => one.amount),
      );

/** Paid in one go, in part, or more than it came to. */
function leadPaid(facts: BillFacts, paid: Money, setting: Setting, format: Format): string {
  const words = setting.words.kinds.bill;
  const left = subtract(facts.total, paid);
  const [only, ...more] = facts.payments ?? [];
  if (left.minor === 0 && only && more.length === 0)
    return format.say(words.leadPaid, { day: format.date(only.at), how: only.how });
  return left.minor < 0
    ? format.say(words.leadBack, { paid: format.money(paid), left: format.money(subtract(paid, facts.total)) })
    : format.say(words.leadLeft, { paid: format.money(paid), left: format.money(left) });
}

function payments(facts: BillFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds.bill;
  const paid = paidSoFar(facts);
  if (!paid) return [];
  const left = subtract(facts.total, paid);
  return amounts(words.payments, [
    ...(facts.payments ?? []).map((one) => ({
      what: format.say(words.payment, { what: one.what, day: format.date(one.at), how: one.how }),
      amount: format.money(one.amount),
    })),
    {
      what: left.minor < 0 ? words.back : words.left,
      amount: format.money(left.minor < 0 ? subtract(paid, facts.total) : left),
      total: true as const,
    },
  ]);
}

const rates = ({ byRate = [] }: BillFacts, setting: Setting, format: Format): Block[] =>
  amounts(
    setting.words.kinds.bill.rates,
    byRate.map(({ rate, net, tax }) => ({
      what: format.say(setting.words.kinds.bill.rate, { rate, net: format.money(net) }),
      amount: format.money(tax),
    })),
  );

const ownersWord = ({ word = [] }: BillFacts, setting: Setting, format: Format): readonly string[] =>
  word.map((one) => {
    const words = setting.words.kinds.bill;
    const text = format.say(words.wordText, {
      when: format.dayTime(one.at),
      who: one.who,
      how: howGiven(one.given, setting, format),
      heardBy: one.heardBy,
      says: one.says,
    });
    return one.more && one.more.minor !== 0
      ? format.say(words.wordMore, { says: text, amount: format.money(one.more) })
      : text;
  });

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

function addsUp({ lines, total, taxTotal, byRate }: BillFacts): void {
  const sum = (of: 'amount') => lines.reduce((minor, line) => minor + line[of].minor, 0);
  const taxes = byRate ?? lines.map((line) => ({ tax: line.tax }));
  const tax = taxes.reduce((minor, one) => minor + (one.tax?.minor ?? 0), 0);
  if (sum('amount') !== total.minor || tax !== taxTotal.minor) {
    throw new Error(
      `The bill's lines come to ${sum('amount')} (tax ${tax}), not to ${total.minor} (tax ${taxTotal.minor}).`,
    );
  }
  if (lines.some((line) => line.amount.currency !== total.currency)) throw new Error('A bill is in one currency.');
}
