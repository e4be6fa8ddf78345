import { chosenOf, limitAfter, limitByAnswers, movesLimit, type Question } from '../../approval/question.ts';
import type { Job } from '../../job/job.ts';

/** When a question was answered, in epoch milliseconds; 0 while it is not. */
export const answeredAt = (question: Question): number => question.answer?.at ?? 0;

/** The limit before the answer to this question and from then on, in minor units; null where the answer does not move it. */
export function limitOfWord(
  { firstLimitMinor, questions }: Pick<Job, 'firstLimitMinor' | 'questions'>,
  question: Question,
): { readonly before: number; readonly now: number } | null {
  const chosen = chosenOf(question);
  if (!chosen.some(movesLimit)) return null;
  const earlier = questions.filter((one) => one.id !== question.id && answeredAt(one) <= answeredAt(question));
  const before = limitByAnswers(firstLimitMinor, earlier);
  return { before, now: limitAfter(before, chosen) };
}
