import { isOpen, type Question } from '../../approval/question.ts';
import { type EpochMs, epochMs } from '../../time.ts';

/** Tries that did not reach the owner: after so many as the shop has agreed the question may lapse. */
export const triesInVain = ({ tries }: Pick<Question, 'tries'>): number =>
  tries.filter((one) => one.result !== 'reached').length;

/**
 * By when the owner is to be tried again: at once when the question is put, then spread evenly over the time for which it
 * holds (common practice, no source). Null when it is not open, and when it was tried as often as the shop has agreed.
 */
export function nextTry(question: Question, triesBeforeHome: number): EpochMs | null {
  const inVain = triesInVain(question);
  if (!isOpen(question) || inVain >= triesBeforeHome) return null;
  const { askedAt, validUntil } = question;
  return epochMs(askedAt + Math.round((inVain * (validUntil - askedAt)) / triesBeforeHome));
}
