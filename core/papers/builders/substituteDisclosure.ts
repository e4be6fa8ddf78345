import type { Money } from '../../money/money.ts';
import type { EpochMs, Minutes } from '../../time.ts';
import { answerSigning, choiceBlock, readySection, untilSection } from '../answering.ts';
import { amounts, items, joined, says, strongly } from '../blocks.ts';
import type { Block, ComparedAs, ComparisonBlock, Sheet, Text } from '../content.ts';
import type { AnswerOptionFacts, ChargeFacts, CommonFacts, PartCondition, SignatureFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { answerFields, sheet } from '../sheet.ts';

/** One attribute of both parts. What is not known on a side is left out and printed as not known. */
export type ComparedFacts = {
  readonly attribute: string;
  readonly yours?: string;
  readonly offered?: string;
  readonly verdict: ComparedAs;
  /** A plain remark: "you use none". */
  readonly note?: string;
};

/**
 * Anything but the same part is disclosed attribute by attribute, with its condition (new, used, refurbished), price,
 * whose warranty, what the owner will notice and what there is to do afterwards. Nothing is fitted before the answer.
 */
export type SubstituteDisclosureFacts = CommonFacts & {
  readonly part: { readonly what: string; readonly verdict: 'confirmed' | 'named' };
  readonly offered: {
    readonly name: string;
    readonly condition: PartCondition;
    readonly price: Money;
    /** Comes off the price when the old part goes back to its maker. */
    readonly coreBack?: Money;
    readonly warranty: string;
  };
  readonly whyNotSame: string;
  readonly rows: readonly ComparedFacts[];
  readonly notice: string;
  readonly afterwards: readonly { readonly says: string; readonly minutes: Minutes; readonly price?: Money }[];
  readonly extras?: readonly ChargeFacts[];
  /** Answers of equal size: this one, one like yours, none, … */
  readonly options: readonly AnswerOptionFacts[];
  /** What each answer comes to with work, in one sentence. */
  readonly totals?: string;
  readonly oldPart?: readonly { readonly text: string; readonly chosen?: boolean }[];
  /** The day that was told before. */
  readonly readyTold?: EpochMs;
  readonly validUntil: EpochMs;
  readonly without: string;
  readonly signature?: SignatureFacts;
};

/** The lesser ones first; what cannot be compared is said last and never passed over. */
const ORDER: readonly ComparedAs[] = ['worse', 'better', 'equal', 'cannot-be-compared'];
/** With more attributes than these, the equal ones are gathered in one line. */
const LISTED_WHOLE = 9;

/**
 * The disclosure of how a part on offer differs from the owner's, laid out without drawing; amounts in minor units,
 * moments in ms of the epoch.
 */
export function substituteDisclosure(facts: SubstituteDisclosureFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const { common } = setting.words;
  const words = setting.words.kinds['substitute-part-disclosure'];
  const worse = facts.rows.filter((row) => row.verdict === 'worse').length;
  const better = facts.rows.some((row) => row.verdict === 'better');
  const { offered, part } = facts;
  return sheet('substitute-part-disclosure', facts, setting, format, {
    title: worse > 0 ? words.title : better ? words.titleBetter : words.titleEqual,
    lead: joined(
      format.say(part.verdict === 'confirmed' ? words.leadConfirmed : words.leadNamed, { part: part.what }),
      worse > 0 ? format.say(words.leadWorse, { n: worse }) : words.leadNotWorse,
      words.leadStop,
    ),
    body: [
      {
        label: words.what,
        blocks: says(
          strongly(
            offered.name,
            format.say(words.offered, {
              condition: common.condition[offered.condition],
              price: format.money(offered.price),
              warranty: offered.warranty,
            }),
          ),
          offered.coreBack && format.say(words.coreBack, { amount: format.money(offered.coreBack) }),
        ),
      },
      { label: words.whySame, blocks: says(facts.whyNotSame) },
      { label: words.compare, wide: true, blocks: comparison(facts.rows, setting, format) },
      { label: words.notice, blocks: says(facts.notice) },
      { label: words.after, blocks: afterwards(facts, setting, format) },
      {
        label: words.extras,
        blocks: amounts(
          words.summaryExtras,
          (facts.extras ?? []).map(({ what, amount }) => ({ what, amount: format.money(amount) })),
        ),
      },
      {
        label: format.say(words.answer, { n: facts.options.length }),
        wide: true,
        blocks: [answerFields(facts.options, setting, format), ...says(facts.totals)],
      },
      {
        label: words.oldPart,
        blocks: facts.oldPart?.length ? [choiceBlock(facts.oldPart, setting)] : [],
      },
      readySection(facts.readyTold, setting, format),
      untilSection(facts, setting, format),
    ],
    signing: answerSigning(facts.signature, words.signed, setting, format),
  });
}

function comparison(rows: readonly ComparedFacts[], setting: Setting, format: Format): Block[] {
  const { common } = setting.words;
  const words = setting.words.kinds['substitute-part-disclosure'];
  const equal = rows.filter((row) => row.verdict === 'equal');
  const gather = rows.length > LISTED_WHOLE && equal.length > 1;
  const listed = ORDER.flatMap((verdict) =>
    gather && verdict === 'equal' ? [] : rows.filter((row) => row.verdict === verdict),
  );
  const verdictText = ({ verdict, note }: ComparedFacts): Text => {
    const word = words.verdicts[verdict];
    const tail = note ? `, ${note}` : '';
    return verdict === 'worse' ? strongly(word, tail) : `${word}${tail}`;
  };
  const block: ComparisonBlock = {
    block: 'comparison',
    summary: words.summary,
    columns: [words.attribute, words.yours, words.onOffer, words.ruler, words.verdict],
    rows: listed.map((row) => ({
      attribute: row.attribute,
      yours: row.yours ?? common.notKnown,
      offered: row.offered ?? common.notKnown,
      verdict: row.verdict,
      verdictSays: verdictText(row),
    })),
  };
  return gather
    ? [
        block,
        ...says(
          strongly(
            format.say(words.equalGathered, { n: equal.length }),
            `: ${equal.map((row) => row.attribute).join(' · ')}.`,
          ),
        ),
      ]
    : [block];
}

function afterwards({ afterwards: list }: SubstituteDisclosureFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['substitute-part-disclosure'];
  if (list.length === 0) return says(words.afterNone);
  return items(
    list.map(({ says: what, minutes, price }) => {
      if (minutes === 0 && !price) return what;
      return price
        ? format.say(words.afterPrice, { says: what, minutes: format.minutes(minutes), amount: format.money(price) })
        : format.say(words.afterMinutes, { says: what, minutes: format.minutes(minutes) });
    }),
  );
}
