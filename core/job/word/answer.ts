import { z } from 'zod';
import { type Asking, accept, type Decision, refuse } from '../../decision.ts';
import { personal } from '../../journal/personal.ts';
import { mayAnswer } from '../../word/mayAnswer.ts';
import { isOpen, type Question } from '../../word/question.ts';
import { type Book, openBook } from '../book.ts';
import { spentMinor } from '../charges.ts';
import { jobCommand } from '../command.ts';
import { zEpoch, zHow, zId, zJobId, zLine, zQuestionId } from '../fields.ts';
import type { Job } from '../job.ts';
import { issuePaper } from '../papers/issue.ts';
import { OPEN_STAGES } from '../stage.ts';
import type { View } from '../view.ts';
import { howAnswered } from './howAnswered.ts';

/** Writes down a try to reach the owner. */
export const logTry = jobCommand(
  'log-try',
  z.strictObject({
    job: zJobId,
    question: zQuestionId,
    at: zEpoch,
    how: z.enum(['phone', 'mail', 'message', 'letter']),
    result: z.enum(['no-answer', 'message-left', 'sent', 'reached']),
    number: zLine.nullable(),
  }),
  OPEN_STAGES,
  (view, { job, number, ...rest }) => {
    const question = view.job.questions.find((one) => one.id === rest.question);
    if (!question) return refuse('no-such-question', { question: rest.question });
    if (!isOpen(question))
      return refuse('question-not-open', {
        question: question.id,
        answered: question.answer !== null,
        lapsed: question.lapsed,
      });
    return accept({
      stream: `job:${job}`,
      kind: 'tried',
      v: 1,
      body: { ...rest, number: number === null ? null : personal('record', view.job.owner, number) },
    });
  },
);

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
  const question = view.job.questions.find((one) => one.id === input.question);
  if (!question) return refuse('no-such-question', { question: input.question });
  if (!isOpen(question))
    return refuse('question-not-open', {
      question: question.id,
      answered: question.answer !== null,
      lapsed: question.lapsed,
    });
  if (asking.at > question.validUntil)
    return refuse('question-lapsed', { question: question.id, validUntil: question.validUntil });
  const chosen = question.options.filter((option) => input.options.includes(option.id));
  if (chosen.length !== new Set(input.options).size)
    return refuse('no-such-option', { options: input.options, offered: question.options.map((option) => option.id) });
  const limit = chosen.reduce<number | null>((sum, option) => option.agrees.limitMinor ?? sum, null);
  if (!view.owner || !mayAnswer(view.owner, input.name, limit)) return refuse('may-not-answer', { name: input.name });
  if (limit !== null && limit < spentMinor(view.job))
    return refuse('limit-below-spent', { limitMinor: limit, spentMinor: spentMinor(view.job) });
  const book = openBook(view, asking);
  book.add(`job:${input.job}`, 'answered', {
    question: question.id,
    answer: {
      options: input.options,
      name: personal('record', view.job.owner, input.name),
      how: howAnswered(asking, view.job.owner, input.how),
      heardBy: asking.by,
      at: asking.at,
    },
  });
  writeAgreed(book, question, chosen);
  const goesOn = chosen.at(-1)?.agrees.goesTo ?? 'back';
  if (view.job.stage === 'owners-word-needed') book.enter(goesOn === 'back' ? question.cameFrom : goesOn, 'answered');
  else if (goesOn !== 'back') book.enter(goesOn, 'answered');
  issuePaper(book, 'owners-word-record', asking);
  return book.accept();
}

function writeAgreed(book: Book, question: Question, chosen: Question['options']): void {
  const job = book.view().job;
  if (!job) return;
  const sold = (what: string, part: string | null, priceMinor: number, warrantyMonths: number) =>
    book.add(`job:${job.id}`, 'sold', { what, part, priceMinor, warrantyMonths, question: question.id });
  for (const option of chosen) {
    if (option.agrees.accepts && question.offer) {
      const { part, name, priceMinor, warrantyMonths } = question.offer;
      sold(name, part, priceMinor, warrantyMonths);
    }
    for (const item of option.agrees.items)
      sold(item.what, null, item.priceMinor, book.view().shop.settings?.warrantyMonths.part ?? 0);
  }
  if (question.offer && !chosen.some((option) => option.agrees.accepts))
    book.add(`part:${question.offer.part}`, 'part-released', { job: job.id });
}

/** Past its time, or after the agreed number of tries: no answer is not a yes, and the machine goes home as it came. */
export const lapse = jobCommand(
  'lapse',
  z.strictObject({ job: zJobId, question: zQuestionId }),
  OPEN_STAGES,
  (view, input, asking) => {
    const question = view.job.questions.find((one) => one.id === input.question);
    if (!question || !isOpen(question))
      return refuse('question-not-open', {
        question: input.question,
        answered: question?.answer != null,
        lapsed: question?.lapsed ?? false,
      });
    const tries = view.shop.settings?.rules.triesBeforeHome ?? 3;
    if (asking.at <= question.validUntil && question.tries.length < tries)
      return refuse('question-still-valid', {
        validUntil: question.validUntil,
        tries: question.tries.length,
        triesBeforeHome: tries,
      });
    const book = openBook(view, asking);
    book.add(`job:${input.job}`, 'question-lapsed', { question: question.id });
    if (question.offer) book.add(`part:${question.offer.part}`, 'part-released', { job: input.job });
    if (view.job.stage === 'owners-word-needed') book.enter('home-as-it-came', 'never-answered');
    return book.accept();
  },
);

/** The owner takes their word back for what is not done yet. */
export const withdrawWord = jobCommand(
  'withdraw-word',
  z.strictObject({ job: zJobId, question: zQuestionId }),
  OPEN_STAGES,
  (view, input, asking) => {
    const question = view.job.questions.find((one) => one.id === input.question);
    if (!question?.answer || question.withdrawn) return refuse('question-not-answered', { question: input.question });
    const done = question.offer && view.parts.get(question.offer.part)?.belongs.to === 'owner';
    if (done) return refuse('already-done', { question: question.id });
    const book = openBook(view, asking);
    book.add(`job:${input.job}`, 'word-withdrawn', { question: question.id });
    book.enter('owners-word-needed', 'word-withdrawn');
    return book.accept();
  },
);
