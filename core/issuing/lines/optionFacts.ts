import type { OfferedPart, Question, QuestionOption } from '../../approval/question.ts';
import type { AnswerOptionFacts } from '../../papers/facts.ts';
import { amount } from '../common.ts';
import type { Making } from '../making.ts';

/** The answers that can be given, each with what goes with it; none ticked before the answer is known. */
export const optionFacts = (making: Making, { options, answer, offer }: Question): readonly AnswerOptionFacts[] =>
  options.map((option) => ({
    title: option.says,
    ...(option.agrees.limitMinor !== null && { figure: amount(making, option.agrees.limitMinor) }),
    lines: linesOf(making, option, offer),
    ...(answer && { chosen: answer.options.includes(option.id) }),
  }));

/** Small parts that stand beside the offer with their prices are not said again in the answer. */
function linesOf(making: Making, { agrees }: QuestionOption, offer: OfferedPart | null): readonly string[] {
  const { words, format } = making;
  const { options } = words.facts;
  return [
    ...(agrees.limitMinor === null ? [] : [options.limit]),
    ...((agrees.raisesMinor ?? 0) > 0 ? [options.raises] : []),
    ...agrees.items
      .filter(({ what }) => !offer?.extras.some((extra) => extra.what === what))
      .map(({ what, priceMinor }) => `${what}, ${format.money(amount(making, priceMinor))}`),
    ...(agrees.dead ? [options[agrees.dead.answer]] : []),
  ];
}
