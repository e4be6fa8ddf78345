import { chosenOf, type Question, type QuestionOption } from '../../approval/question.ts';
import { newestAnswered } from '../../job/approval/wordOnRecord.ts';
import type { Paper } from '../../papers/content.ts';
import { PAPER_KINDS } from '../../papers/kinds.ts';
import { amount, common, withoutAnswer, wordFacts } from '../common.ts';
import { type Lacking, lacking } from '../lacking.ts';
import { limitOfWord } from '../lines/limitOfWord.ts';
import type { Making } from '../making.ts';
import { newestQuestion, partInText, partName } from '../worded.ts';

/**
 * What was asked, every try, who answered and how, and the limit that holds from then on: of the last answer that
 * stands, as it stands in the job's stream.
 */
export function ownersWordPaper(making: Making): Paper | Lacking {
  const question = newestAnswered(making.job) ?? newestQuestion(making, (one) => one.lapsed);
  if (!question) return lacking('paper-nothing-answered');
  const chosen = chosenOf(question);
  const items = agreedItems(making, question, chosen);
  const limit = limitOfWord(making.job, question);
  return PAPER_KINDS['owners-word-record'].build(
    {
      ...common(making),
      question: question.says,
      options: question.options.map(({ id, says }) => ({
        says,
        chosen: question.answer?.options.includes(id) ?? false,
      })),
      tries: question.tries,
      answer: question.answer ? wordFacts(making, question.answer) : { lapsed: true, without: withoutAnswer(making) },
      conditions: conditions(making, chosen),
      ...(items.length > 0 && {
        agreed: items.map(({ what, minor }) => ({ what, amount: amount(making, minor) })),
        additionalTotal: amount(
          making,
          items.reduce((sum, { minor }) => sum + minor, 0),
        ),
      }),
      ...(limit && { limit: { now: amount(making, limit.now), before: amount(making, limit.before) } }),
    },
    making.setting,
  );
}

function agreedItems(making: Making, { offer }: Question, chosen: readonly QuestionOption[]) {
  const { setting, view } = making;
  const had = offer && view.parts.get(offer.forPart);
  const accepted = offer && chosen.some((option) => option.agrees.accepts);
  return [
    ...(accepted
      ? [
          {
            what: `${had ? partName(making, { kind: had.kind, name: offer.name }) : offer.name}, ${setting.words.common.condition[offer.condition]}`,
            minor: offer.priceMinor,
          },
        ]
      : []),
    ...chosen.flatMap(({ agrees }) => agrees.items.map(({ what, priceMinor }) => ({ what, minor: priceMinor }))),
  ];
}

/** What else the answer says: of the old part, and of the data. */
function conditions(making: Making, chosen: readonly QuestionOption[]): readonly string[] {
  const { words, view, format } = making;
  const { facts } = words;
  return chosen.flatMap(({ agrees }) => {
    const part = agrees.dead && view.parts.get(agrees.dead.part);
    return [
      ...(agrees.data ? [facts.conditions[agrees.data]] : []),
      ...(agrees.dead
        ? [
            format.say(facts.conditions[agrees.dead.answer], {
              part: part ? partInText(making, part) : facts.aPart,
            }),
          ]
        : []),
    ];
  });
}
