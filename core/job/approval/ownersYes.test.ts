import { expect, it } from 'vitest';
import { judith } from '../../../tests/builders/jobAt.ts';
import { noConsents } from '../../approval/consent.ts';
import type { Agrees, QuestionOption } from '../../approval/question.ts';
import type { Signature } from '../../approval/signature.ts';
import { personal } from '../../journal/personal.ts';
import { epochMs } from '../../time.ts';
import { takenInFirst } from '../came.ts';
import type { Job } from '../job.ts';
import { mayCopy, mayTakeDays, worthThatCounts } from './ownersYes.ts';

const signature: Signature = {
  name: personal('signature', judith.id, 'Judith'),
  drawn: null,
  typed: true,
  contentHash: 'a'.repeat(64),
  at: epochMs(0),
};
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

it('their data is copied by their newest answer about it, taken back ones apart; without any, by the sheet', () => {
  const sheet = (copy: 'yes' | 'no') => ({ ...noConsents, answers: { copy }, signature });
  const about = (id: string, data: Agrees['data'], more: object = {}) => ({
    id,
    options: [{ id: 'it', says: '', agrees: { ...nothing, data } }],
    withdrawn: false,
    ...said('it'),
    ...more,
  });
  const may = (copy: 'yes' | 'no', ...questions: readonly object[]) =>
    mayCopy({
      questions: questions as unknown as Job['questions'],
      consents: sheet(copy),
      came: { ...takenInFirst, answered: { first: 3, second: 5 } },
    });
  expect([may('yes'), may('no')]).toEqual([true, false]);
  expect(may('yes', about('first', 'leave'))).toBe(false);
  expect(may('no', about('first', 'copy'))).toBe(true);
  expect(may('no', about('second', 'copy'), about('first', 'leave'))).toBe(true);
  expect(may('yes', about('second', 'unplug'), about('first', 'copy'))).toBe(false);
  expect(may('no', about('first', 'copy', { withdrawn: true }))).toBe(false);
  expect(may('yes', about('first', null))).toBe(true);
});
