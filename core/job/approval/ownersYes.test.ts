import { expect, it } from 'vitest';
import type { QuestionOption } from '../../approval/question.ts';
import type { Job } from '../job.ts';
import { mayTakeDays, worthThatCounts } from './ownersYes.ts';

const nothing = { limitMinor: null, items: [], accepts: false, data: null, dead: null, goesTo: 'back' } as const;
const options: readonly QuestionOption[] = [
  { id: 'yes', says: 'Order one to try.', agrees: { ...nothing, daysAway: 'order-to-try' } },
  { id: 'no', says: 'Do not.', agrees: nothing },
];
const asked = (given: object): Pick<Job, 'questions'> =>
  ({ questions: [{ options, withdrawn: false, answer: null, ...given }] }) as never;
const said = (...chosen: readonly string[]) => ({ answer: { options: chosen } });

it('nothing is ordered to try, or sent out, by anything but the owner’s own yes to just that, not taken back', () => {
  expect(mayTakeDays(asked(said('yes')), 'order-to-try')).toBe(true);
  expect(mayTakeDays(asked(said('yes')), 'send-out')).toBe(false);
  expect(mayTakeDays(asked(said('no')), 'order-to-try')).toBe(false);
  expect(mayTakeDays(asked({}), 'order-to-try')).toBe(false);
  expect(mayTakeDays(asked({ ...said('yes'), withdrawn: true }), 'order-to-try')).toBe(false);
});

it('what the machine is worth ends nothing once the owner said to go on all the same, until they take it back', () => {
  const onward: readonly QuestionOption[] = [
    { id: 'on', says: 'Go on all the same.', agrees: { ...nothing, beyondWorth: true } },
    { id: 'stop', says: 'Stop.', agrees: nothing },
  ];
  const worth = (given: object) => worthThatCounts({ ...asked({ options: onward, ...given }), worthMinor: 3_000 });
  expect(worth({})).toBe(3_000);
  expect(worth(said('stop'))).toBe(3_000);
  expect(worth(said('on'))).toBeNull();
  expect(worth({ ...said('on'), withdrawn: true })).toBe(3_000);
});
