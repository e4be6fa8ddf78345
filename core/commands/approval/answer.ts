import { z } from 'zod';
import { chosenOf, limitAfter, movesLimit, type Question } from '../../approval/question.ts';
import type { View } from '../../entries/view.ts';
import { linesAgreedBy } from '../../job/approval/linesAgreedBy.ts';
import type { Job } from '../../job/job.ts';
import { committedMinor, limitRefusal } from '../../job/money/withinWord.ts';
import { mayBeAgreed } from '../../job/orders/order.ts';
import { personal } from '../../journal/personal.ts';
import type { Refusal } from '../../refusal.ts';
import { OPEN_STAGES } from '../../stage.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import { type Decision, refuse } from '../kernel/decision.ts';
import { zHow, zId, zJobId, zLine, zQuestionId } from '../kernel/fields.ts';
import { openUnitOfWork, type UnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';
import { whyNotHeard } from './heard.ts';
import { howAnswered } from './howAnswered.ts';
import { openQuestion } from './openQuestion.ts';

const zAnswer = z.strictObject({
  job: zJobId,
  question: zQuestionId,
  options: z.array(zId).min(1).max(8),
  name: zLine,
  how: zHow,
});

/**
 * The owner's word: which options, by whom, how. What it allows is what stands in the options and nothing more. Out
 * comes the owner's-word record. Refuses an answer after the question lapsed, and one by someone who may not give it.
 */
export const answer = jobCommand('answer', zAnswer, OPEN_STAGES, decideAnswer, () => ({
  papers: ['owners-word-record'],
}));

function decideAnswer(view: View & { readonly job: Job }, input: z.infer<typeof zAnswer>, asking: Asking): Decision {
  const question = openQuestion(view.job, input.question);
  if ('refused' in question) return { ok: false, refusal: question };
  if (asking.at > question.validUntil)
    return refuse('question-lapsed', { question: question.id, validUntil: question.validUntil });
  const chosen = chosenOf({ options: question.options, answer: input });
  if (chosen.length !== new Set(input.options).size)
    return refuse('no-such-option', { options: input.options, offered: question.options.map((option) => option.id) });
  if (chosen.length > 1 && !question.several)
    return refuse('one-answer-only', { options: input.options, question: question.id });
  const gone = chosen.find(({ agrees }) => agrees.order && !waits(view.job, agrees.order.order));
  if (gone) return refuse('no-such-order', { order: gone.agrees.order?.order });
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${input.job}`, 'answered', {
    question: question.id,
    answer: {
      options: input.options,
      name: personal('record', view.job.owner, input.name),
      how: howAnswered(asking, view.job.owner, input.how),
      heardBy: asking.by,
      at: asking.at,
    },
  });
  writeAgreed(unit, question, chosen);
  const problem = answerProblem(view, unit, input, question, asking);
  if (problem) return { ok: false, refusal: problem };
  const goesOn = chosen.at(-1)?.agrees.goesTo ?? 'back';
  if (view.job.stage === 'owners-word-needed') unit.enter(goesOn === 'back' ? question.cameFrom : goesOn, 'answered');
  else if (goesOn !== 'back') unit.enter(goesOn, 'answered');
  issuePaper(unit, 'owners-word-record', asking);
  return unit.accept();
}

/** An answer about what came counts while that is here and not fitted. */
const waits = (job: Job, id: string): boolean =>
  job.orders.some((order) => order.order === id && mayBeAgreed(job, order));

/** Is it theirs to say, and does what they agree to fit the limit that holds from then on? */
function answerProblem(
  view: View & { readonly job: Job },
  unit: UnitOfWork,
  input: z.infer<typeof zAnswer>,
  question: Question,
  asking: Asking,
): Refusal | null {
  const after = unit.view().job ?? view.job;
  const chosen = chosenOf({ options: question.options, answer: input });
  const named = chosen.some(movesLimit) ? limitAfter(view.job.limitMinor, chosen) : null;
  const sells = after.agreedLines.some((line) => !view.job.agreedLines.includes(line));
  const heard = whyNotHeard(
    view,
    input,
    {
      amountMinor: named ?? (sells ? committedMinor(after) : null),
      data: chosen.some(({ agrees }) => agrees.data !== null),
    },
    question.askedAt,
    asking,
  );
  if (heard) return heard;
  const spentMinor = committedMinor(view.job);
  if (named !== null && named < spentMinor && view.job.charging !== 'free')
    return { refused: 'limit-below-spent', limitMinor: named, spentMinor };
  return limitRefusal(view.job, after, question.says);
}

function writeAgreed(unit: UnitOfWork, question: Question, chosen: Question['options']): void {
  const job = unit.view().job;
  if (!job) return;
  const months = unit.view().shop.settings?.warrantyMonths.part ?? 0;
  for (const { agrees } of chosen)
    for (const line of linesAgreedBy(agrees, question.offer, months))
      unit.add(`job:${job.id}`, 'line-agreed', { ...line, question: question.id });
  for (const { agrees } of chosen)
    if (agrees.order)
      unit.add(`job:${job.id}`, 'order-agreed', {
        ...agrees.order,
        question: question.id,
        warrantyMonths: months,
      });
  if (question.offer && !chosen.some((option) => option.agrees.accepts))
    unit.add(`part:${question.offer.part}`, 'part-released', { job: job.id });
}
