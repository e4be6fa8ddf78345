import { expect, it } from 'vitest';
import type { Question } from '../../approval/question.ts';
import { takenInFirst } from '../came.ts';
import { answeredInOrder } from './answeredInOrder.ts';

const asked = (id: string, at: number | null, more: object = {}) =>
  ({ id, answer: at === null ? null : { at }, withdrawn: false, ...more }) as unknown as Question;

it('answers stand in the order in which they were given: not as asked, and not by a clock that was set back', () => {
  const came = { ...takenInFirst, answered: { late: 9, early: 4, taken: 6 } };
  const questions = [
    asked('late', 100),
    asked('open', null),
    asked('early', 200),
    asked('taken', 300, { withdrawn: true }),
  ];
  expect(answeredInOrder({ questions, came }).map(({ id }) => id)).toEqual(['early', 'taken', 'late']);
});
