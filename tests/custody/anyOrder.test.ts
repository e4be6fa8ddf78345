import fc from 'fast-check';
import { describe, it } from 'vitest';
import { deeds } from './deeds.ts';
import { aShopWithTwoMachines } from './twoMachines.ts';

// Two thousand rounds in every run; `KNOWNGOOD_LONG=1` asks for ten times as many.
const ROUNDS = process.env.KNOWNGOOD_LONG ? 20_000 : 2_000;

describe('whatever is done in whatever order', () => {
  it('no part is lost or doubled, no slot holds two, and every yes and no is what the rules say', () => {
    fc.assert(
      fc.property(fc.commands(deeds, { maxCommands: 40, size: '+1' }), (done) => {
        fc.modelRun(aShopWithTwoMachines, done);
      }),
      { numRuns: ROUNDS },
    );
  }, 120_000);
});
