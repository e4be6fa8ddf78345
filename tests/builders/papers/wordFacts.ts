import type { ChangedFindingFacts } from '../../../core/papers/builders/changedFindingNotice.ts';
import type { OwnersWordFacts } from '../../../core/papers/builders/ownersWordRecord.ts';
import { minutes } from '../../../core/time.ts';
import { common, october, pounds } from './harrowmouth.ts';

export const changedFindingFacts: ChangedFindingFacts = {
  ...common('2026-0031', october(13, '11:40')),
  told: 'Since we moved house it stays dark. The fans turn, the screen says no signal.',
  seen: 'It starts and goes off by itself seven times, then stays on and dark. The keyboard’s light does not follow the key. One to three restarts would be normal.',
  means: 'A loose cable is now unlikely. Memory, processor and board are left; finding out which takes longer.',
  before: {
    minutes: { p10: minutes(24), p50: minutes(46), p90: minutes(92) },
    price: { p10: pounds(18), p50: pounds(34.5), p90: pounds(69) },
    passesLimit: 0.03,
  },
  now: {
    minutes: { p10: minutes(78), p50: minutes(152), p90: minutes(236) },
    price: { p10: pounds(58.5), p50: pounds(114), p90: pounds(177) },
    passesLimit: 0.66,
  },
  withPart: { part: 'a board', price: pounds(89), p50: pounds(203), p90: pounds(266) },
  limit: pounds(120),
  soFar: { minutes: minutes(18), amount: pounds(13.5) },
  options: [
    { title: 'Go on finding', figure: pounds(150), lines: ['at most, in all', 'no part without asking you'] },
    { title: 'Stop', figure: pounds(30), lines: ['the fee for finding', 'home as it came'] },
    { title: 'Only save the drawings', figure: pounds(48), lines: ['copy and fee', 'home as it came'] },
  ],
  dataFirst: {
    says: 'While memory is under suspicion each start may write rubbish to the disk.',
    choices: [
      { text: 'copy my data first, £18.00' },
      { text: 'unplug the drives' },
      { text: 'leave them as they are' },
    ],
  },
  validUntil: october(16, '12:00'),
  without: 'It then goes home as it came, and you pay for finding the fault only.',
};

export const ownersWordFacts: OwnersWordFacts = {
  ...common('2026-0052', october(13, '17:20')),
  question:
    'Your board has failed. One like it cannot be had by Friday. May we fit another, not as good in twelve points, and two small leads with it?',
  options: [
    { says: 'Fit the board on offer, with hub lead and fan lead.', chosen: true },
    { says: 'Wait six working days for an equal one.', chosen: false },
    { says: 'Home as it came.', chosen: false },
  ],
  tries: [{ at: october(13, '17:16'), how: 'phone', result: 'reached' }],
  answer: {
    who: 'Judith Amberley',
    at: october(13, '17:16'),
    heardBy: 'Bram Ostler',
    given: {
      how: 'by-phone',
      phone: '07700 900 143',
      readBack:
        'The new board for 89 pounds, both leads, 260 pounds in all at most. You keep my old board until January.',
    },
  },
  conditions: ['The old board stays with the shop until 14 January 2027.', 'She enters the recovery key herself.'],
  agreed: [
    { what: 'Board Wrenfield WF-M2, new', amount: pounds(89) },
    { what: 'Inside hub lead', amount: pounds(7.5) },
    { what: 'Fan lead, one to three', amount: pounds(6) },
    { what: 'Fitting and proving, about 78 minutes', amount: pounds(58.5) },
  ],
  additionalTotal: pounds(161),
  limit: { now: pounds(260), before: pounds(150) },
};
