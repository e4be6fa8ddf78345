import { subtract } from '../../money/arithmetic.ts';
import type { Money } from '../../money/money.ts';
import { asSentence } from '../../text/asSentence.ts';
import type { EpochMs } from '../../time.ts';
import { amounts, facts as factTable, items, says, strongly, table } from '../blocks.ts';
import type { Block, Section, Sheet } from '../content.ts';
import type { ChargeFacts, CommonFacts, WordFacts } from '../facts.ts';
import { type Format, formatFor } from '../format.ts';
import type { Setting } from '../setting.ts';
import { howGiven, sheet, signing } from '../sheet.ts';

export type TryFacts = {
  readonly at: EpochMs;
  readonly how: 'phone' | 'mail' | 'message' | 'letter';
  readonly result: 'no-answer' | 'message-left' | 'sent' | 'reached';
};

/**
 * The owner's word as it was given. For a word given by telephone its fields are those that 16 CCR 2722 (California)
 * asks for: date, time, who authorised, the number called, who heard it, conditions, the additional parts and labour,
 * and the total additional cost.
 */
export type OwnersWordFacts = CommonFacts & {
  readonly question: string;
  readonly options: readonly { readonly says: string; readonly chosen: boolean }[];
  readonly tries: readonly TryFacts[];
  readonly answer: WordFacts | { readonly lapsed: true; readonly without: string };
  readonly conditions?: readonly string[];
  /** Additional parts and labour agreed to. */
  readonly agreed?: readonly ChargeFacts[];
  readonly additionalTotal?: Money;
  readonly limit?: { readonly now: Money; readonly before?: Money };
};

/**
 * The record of the owner's answer, or of none, laid out without drawing; amounts in minor units, moments in ms of
 * the epoch.
 */
export function ownersWordRecord(facts: OwnersWordFacts, setting: Setting): Sheet {
  const format = formatFor(setting);
  const words = setting.words.kinds['owners-word-record'];
  const { answer, limit } = facts;
  return sheet('owners-word-record', facts, setting, format, {
    lead:
      'lapsed' in answer
        ? format.say(words.leadLapsed, { without: answer.without })
        : format.say(words.lead, {
            day: format.day(answer.at),
            time: format.time(answer.at),
            who: answer.who,
            how: howGiven(answer.given, setting, format),
            answer: facts.options
              .filter(({ chosen }) => chosen)
              .map(({ says }) => asSentence(says))
              .join(' '),
          }),
    body: [
      { label: words.asked, blocks: says(facts.question) },
      {
        label: words.options,
        blocks: items(
          facts.options.map(({ says: text, chosen }) => (chosen ? strongly(text, ` (${words.chosen})`) : text)),
        ),
      },
      ...('lapsed' in answer ? [] : answerSections(answer, setting, format)),
      { label: words.conditions, blocks: items(facts.conditions) },
      { label: words.more, blocks: agreed(facts, setting, format) },
      {
        label: words.limit,
        blocks: says(
          limit &&
            strongly(
              format.money(limit.now),
              limit.before ? `, ${limitWords(facts, limit.now, limit.before, setting, format)}` : '',
            ),
        ),
      },
      {
        label: words.tries,
        blocks: table(
          words.triesSummary,
          [
            { head: words.when2, share: 4 },
            { head: words.by, share: 3 },
            { head: words.came, share: 4 },
          ],
          facts.tries.map(({ at, how, result }) => ({
            cells: [format.shortDayTime(at), words.waysOf[how], words.results[result]],
          })),
        ),
      },
      { label: words.wrongLabel, blocks: 'lapsed' in answer ? [] : says(words.wrong) },
    ],
  });
}

function answerSections(answer: WordFacts, setting: Setting, format: Format): Section[] {
  const words = setting.words.kinds['owners-word-record'];
  const { given } = answer;
  const own: Block[] =
    given.how === 'at-the-counter' && given.signature ? [signing(given.signature, words.signed, setting, format)] : [];
  return [
    {
      label: words.answered,
      blocks: [
        ...factTable(
          [words.who, answer.who],
          [words.when, format.dayTime(answer.at)],
          [words.how, howGiven(given, setting, format)],
          [words.heard, answer.heardBy],
          [
            words.readBack,
            given.how === 'by-phone' &&
              given.readBack &&
              format.say(setting.words.common.quoted, { text: given.readBack }),
          ],
          [
            words.words,
            given.how === 'in-writing' && given.words && format.say(setting.words.common.quoted, { text: given.words }),
          ],
        ),
        ...own,
      ],
    },
  ];
}

function agreed(facts: OwnersWordFacts, setting: Setting, format: Format): Block[] {
  const words = setting.words.kinds['owners-word-record'];
  const total = facts.additionalTotal;
  return amounts(words.summaryMore, [
    ...(facts.agreed ?? []).map(({ what, amount }) => ({ what, amount: format.money(amount) })),
    ...(total ? [{ what: words.moreTotal, amount: format.money(total), total: true as const }] : []),
  ]);
}

/**
 * The limit that held before, by how much it is higher now, and how that goes with what was agreed to: the rest of it is
 * room for work, or what was agreed to lies in part within what held before.
 */
function limitWords(
  { additionalTotal }: OwnersWordFacts,
  now: Money,
  before: Money,
  setting: Setting,
  format: Format,
): string {
  const words = setting.words.kinds['owners-word-record'];
  const was = format.say(words.limitBefore, { amount: format.money(before) });
  if (now.minor <= before.minor) return was;
  const more = subtract(now, before);
  const raised = `${was}; ${format.say(words.limitMore, { amount: format.money(more) })}`;
  if (!additionalTotal || additionalTotal.minor === more.minor) return raised;
  const agreedTo = format.money(additionalTotal);
  const rest =
    more.minor > additionalTotal.minor
      ? format.say(words.limitRoom, { agreed: agreedTo, room: format.money(subtract(more, additionalTotal)) })
      : format.say(words.limitWithin, { agreed: agreedTo });
  return `${raised}. ${rest}`;
}
