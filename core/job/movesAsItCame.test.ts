import { expect, it } from 'vitest';
import { aMachine, aPart, BIN, inSlot, ours, TRAY } from '../../tests/builders/custody.ts';
import type { PartId } from '../ids.ts';
import { movesAsItCame } from './movesAsItCame.ts';
import { nothingToDo } from './triedArrangements.ts';

const theirs = aPart();
const tray = { at: 'tray', tray: '1', job: 'job-1' } as Parameters<typeof movesAsItCame>[2];

it('ours goes to its bin, theirs back where it belongs, and its plug in', () => {
  const loaner = ours({ place: inSlot('A1') });
  const machine = aMachine({
    inside: { A1: loaner.id },
    belongsIn: { A1: theirs.id },
    unplugged: ['A1', 'x16'],
  });
  const back = movesAsItCame(machine, [loaner, { ...theirs, place: TRAY }], tray);
  expect(back.moves.map(({ part, to }) => [part, to])).toEqual([
    [loaner.id, BIN],
    [theirs.id, inSlot('A1')],
  ]);
  // Nothing sits in the long slot: there is nothing to plug in.
  expect(back.plugIn).toEqual(['A1']);
});

it('two that sit crosswise change places over the tray', () => {
  const other = aPart({ id: 'other' as PartId, place: inSlot('A1') });
  const machine = aMachine({
    inside: { A1: other.id, A2: theirs.id },
    belongsIn: { A1: theirs.id, A2: other.id },
  });
  const { moves } = movesAsItCame(machine, [{ ...theirs, place: inSlot('A2') }, other], tray);
  expect(moves.map(({ part, to }) => [part, to])).toEqual([
    [other.id, tray],
    [theirs.id, inSlot('A1')],
    [other.id, inSlot('A2')],
  ]);
});

it.each([
  ['with the maker', { at: 'away', kind: 'maker', name: 'maker' }],
  ['with its owner', { at: 'with-owner' }],
] as const)('a part %s stays there, and is named', (_where, place) => {
  const machine = aMachine({ belongsIn: { A1: theirs.id } });
  const back = movesAsItCame(machine, [{ ...theirs, place }], tray);
  expect(nothingToDo(back)).toBe(true);
  expect(back.outOfReach).toEqual([theirs.id]);
});

it('what moves with a part that is away stays with it', () => {
  const carrier = aPart({ id: 'cooler' as PartId, place: { at: 'away', kind: 'maker', name: 'maker' } });
  const rider = { ...theirs, place: { at: 'with', part: carrier.id } } as const;
  const { moves, outOfReach } = movesAsItCame(aMachine({ belongsIn: { A1: rider.id } }), [carrier, rider], tray);
  expect(moves).toEqual([]);
  expect(outOfReach).toEqual([rider.id]);
});
