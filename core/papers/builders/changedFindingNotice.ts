import type { Money } from '../../money/money.ts';
import type { EpochMs, Minutes } from '../../time.ts';
import { answerSigning, choiceBlock, readySection, untilSection } from '../answering.ts';
import { joined, says, table } from '../blocks.ts';
import type { Block, Sheet } from '../content.ts';
import type { AnswerOptionFacts, CommonFacts, EstimateFacts, NamedPaper, SignatureFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { answerFields, paperNamed, sheet } from '../sheet.ts';

/** Said when what was seen is not what was told and the estimate no longer fits what was agreed. The job waits. */
export type ChangedFindingFacts = CommonFacts & {
  readonly told: string;
  readonly seen: string;
  /** Why the two differ and what follows, in plain words. */
  readonly means?: string;
  readonly before: EstimateFacts;
  readonly now: EstimateFacts;
  /** The likeliest part, with which the price would be. */
  readonly withPart?: { readonly part: string; readonly price?: Money; readonly p50: Money; readonly p90: Money };
  readonly limit: Money;
  readonly soFar?: { readonly minutes: Minutes; readonly amount: Money };
  readonly options: readonly AnswerOptionFacts[];
  /** Answers about the data, where memory, supply or drive is suspect. */
  readonly dataFirst?: {
    readonly says: string;
    readonly choices: readonly { readonly text: string; readonly chosen?: boolean }[];
  };
  /** The paper whose figures no longer hold. */
  readonly changes?: NamedPaper;
  /** The day that was told before. */
  readonly readyTold?: EpochMs;
  readonly validUntil: EpochMs;
  /** What becomes of the machine without an answer. */
  readonly without: string;
  readonly signature?: SignatureFacts;
};

/**
 * The notice that what was seen is not what was told, laid out without drawing; amounts in minor units, moments in ms
 * of the epoch.
 */
export function changedFindingNotice(facts: ChangedFindingFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const { common } = setting.words;
  const words = setting.words.kinds['changed-finding-notice'];
  const mid = (facts.withPart ?? facts.now.price).p50;
  return sheet('changed-finding-notice', facts, setting, format, {
    lead: format.say(words.lead, { new: format.money(mid), old: format.money(facts.before.price.p50) }),
    body: [
      { label: words.told, blocks: says(format.say(common.quoted, { text: facts.told })) },
      { label: words.seen, blocks: says(facts.seen) },
      {
        label: words.why,
        blocks: says(
          joined(
            facts.means,
            facts.soFar &&
              format.say(words.soText, {
                minutes: format.minutes(facts.soFar.minutes),
                amount: format.money(facts.soFar.amount),
              }),
          ),
        ),
      },
      {
        label: words.figures,
        wide: true,
        blocks: [
          ...figures(facts, setting, format),
          ...says(facts.changes && format.say(words.changes, { paper: paperNamed(facts.changes, setting, format) })),
        ],
      },
      {
        label: format.say(words.answer, { n: facts.options.length }),
        wide: true,
        blocks: [answerFields(facts.options, setting, format)],
      },
      {
        label: words.data,
        blocks: facts.dataFirst ? [...says(facts.dataFirst.says), choiceBlock(facts.dataFirst.choices, setting)] : [],
      },
      readySection(facts.readyTold, setting, format),
      untilSection(facts, setting, format),
    ],
    signing: answerSigning(facts.signature, words.signed, setting, format),
  });
}

function figures(facts: ChangedFindingFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['changed-finding-notice'];
  const { before, now, withPart, limit } = facts;
  const time = ({ minutes }: EstimateFacts) =>
    format.say(words.minutesWithin, { p50: format.minutes(minutes.p50), p90: format.minutes(minutes.p90) });
  const money = (p50: Money, p90: Money) =>
    format.say(words.within, { p50: format.money(p50), p90: format.money(p90) });
  const passes = ({ passesLimit }: EstimateFacts) => (passesLimit === undefined ? '' : format.chance(passesLimit));
  return table(
    words.summary,
    [
      { head: words.of, share: 25 },
      { head: words.before, share: 38 },
      { head: words.now, share: 38 },
    ],
    [
      { cells: [words.work, time(before), time(now)] },
      { cells: [words.price, money(before.price.p50, before.price.p90), money(now.price.p50, now.price.p90)] },
      ...(withPart
        ? [
            {
              cells: [
                format.say(words.withPart, {
                  part: withPart.price ? `${withPart.part}, ${format.money(withPart.price)}` : withPart.part,
                }),
                words.noPart,
                money(withPart.p50, withPart.p90),
              ],
            },
          ]
        : []),
      { cells: [format.say(words.passes, { limit: format.money(limit) }), passes(before), passes(now)], strong: true },
    ],
  );
}
