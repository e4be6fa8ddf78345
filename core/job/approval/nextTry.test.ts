import { expect, it } from 'vitest';
import type { Question } from '../../approval/question.ts';
import type { QuestionId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import { nextTry } from './nextTry.ts';

const HOUR = 3_600_000;
const question = (tries: readonly Question['tries'][number]['result'][], more: Partial<Question> = {}): Question => ({
  id: 'q' as QuestionId,
  kind: 'spend',
  says: 'May we?',
  options: [],
  askedAt: epochMs(HOUR),
  validUntil: epochMs(73 * HOUR),
  cameFrom: 'tracing',
  offer: null,
  tries: tries.map((result) => ({ at: epochMs(2 * HOUR), how: 'phone', result })),
  answer: null,
  lapsed: false,
  withdrawn: false,
  ...more,
});
const hours = (one: Question) => {
  const due = nextTry(one, 3);
  return due === null ? null : due / HOUR;
};

it('the owner is tried at once, then once a day of a question that holds three, and no more than agreed', () => {
  expect(hours(question([]))).toBe(1);
  expect(hours(question(['no-answer']))).toBe(25);
  expect(hours(question(['no-answer', 'message-left']))).toBe(49);
  expect(hours(question(['no-answer', 'message-left', 'no-answer']))).toBeNull();
});
it('a try that reached them is none in vain, and nobody is tried for what was answered or lapsed', () => {
  expect(hours(question(['reached', 'no-answer']))).toBe(25);
  expect(hours(question([], { lapsed: true }))).toBeNull();
});
