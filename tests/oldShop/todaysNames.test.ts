import { expect, it } from 'vitest';
import { inTodaysNames } from './todaysNames.ts';

const then = { limit: 12, log: [{ step: 'swap', says: 'swap it' }], wall: { rigs: 1 } };

it('says an old answer in the names of today', () => {
  const renamed = { fields: { log: 'steps' }, values: { swap: 'exchange' } };
  expect(inTodaysNames(then, renamed, [])).toEqual({
    limit: 12,
    steps: [{ step: 'exchange', says: 'swap it' }],
    wall: { rigs: 1 },
  });
});

it('leaves out what is answered otherwise today, and nothing beside it', () => {
  const none = { fields: {}, values: {} };
  expect(inTodaysNames(then, none, ['log.*.step', 'wall'])).toEqual({ limit: 12, log: [{ says: 'swap it' }] });
  expect(inTodaysNames(then, none, ['step', 'log.step'])).toEqual(then);
});
