import { chosenOf, limitAfter, limitByAnswers, movesLimit, type Question } from '../../approval/question.ts';
import { answeredInOrder } from '../../job/approval/answeredInOrder.ts';
import type { Job } from '../../job/job.ts';

/** The limit before the answer to this question and from then on, in minor units; null where the answer does not move it. */
export function limitOfWord(
  job: Pick<Job, 'firstLimitMinor' | 'questions' | 'came'>,
  question: Question,
): { readonly before: number; readonly now: number } | null {
  const chosen = chosenOf(question);
  if (!chosen.some(movesLimit)) return null;
  const answered = answeredInOrder(job);
  const earlier = answered.slice(
    0,
    answered.findIndex(({ id }) => id === question.id),
  );
  const before = limitByAnswers(job.firstLimitMinor, earlier);
  return { before, now: limitAfter(before, chosen) };
}
