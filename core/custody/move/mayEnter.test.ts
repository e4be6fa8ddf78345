import { describe, expect, it } from 'vitest';
import {
  aMachine,
  aMove,
  aPart,
  BIN,
  DAY,
  inSlot,
  type MACHINE,
  moveView,
  NOON,
  ours,
  TRAY,
} from '../../../tests/builders/custody.ts';
import type { PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { MoveReason, Part } from '../ledger.ts';
import type { Place } from '../place.ts';
import { targetProblem, wordProblem } from './mayEnter.ts';
import type { MoveView } from './move.ts';

const wrote = { answer: 'back', destroy: false, outAndBack: false } as const;
const word = (part: Part, to: Place, view: Partial<MoveView> = {}) =>
  wordProblem(moveView(part, view), part, aMove(part, to), NOON)?.refused ?? null;
const recycled: Place = { at: 'gone', why: 'recycled' };

describe('the owner’s word', () => {
  it('is asked for parts of theirs alone, and where some job could hold one', () => {
    expect(word(aPart(), recycled)).toBe('no-word-for-part');
    expect(word(ours(), recycled)).toBeNull();
    expect(word(aPart(), recycled, { word: null })).toBeNull();
    expect(word(aPart(), TRAY)).toBeNull();
  });

  it('for what was kept counts from its day on', () => {
    const kept = (until: number) => aPart({ place: { at: 'kept', shelf: 'K', until: epochMs(until) } });
    const keep = { word: { ...wrote, answer: 'keep' } } as const;
    expect(word(kept(NOON), recycled, keep)).toBeNull();
    expect(word(kept(NOON + 1), recycled, keep)).toBe('no-word-for-part');
    expect(word(aPart({ place: { at: 'with-owner' } }), recycled, keep)).toBe('no-word-for-part');
    expect(word(kept(NOON - DAY), recycled)).toBe('no-word-for-part');
  });
});

describe('two parts that are to move as one', () => {
  const cooler = (place: Place) => aPart({ id: 'cooler' as PartId, kind: 'cooler', name: 'cooler', place });
  const joins = (part: Part, carrier: Part) =>
    targetProblem(moveView(part, {}, [carrier]), part, aMove(part, { at: 'with', part: carrier.id }))?.refused ?? null;
  const processor = (place: Place) => aPart({ kind: 'processor', name: 'processor', place });

  it('lie in one place or sit in one machine', () => {
    expect(joins(processor(inSlot('socket')), cooler(inSlot('cooler')))).toBeNull();
    expect(joins(processor(TRAY), cooler(TRAY))).toBeNull();
    expect(joins(processor(TRAY), cooler(inSlot('cooler')))).toBe('parts-lie-apart');
    const elsewhere: Place = { at: 'slot', machine: 'machine-2' as typeof MACHINE, slot: 'cooler' };
    expect(joins(processor(inSlot('socket')), cooler(elsewhere))).toBe('parts-lie-apart');
  });
});

describe('a part of theirs in another slot than its own', () => {
  const part = aPart({ place: TRAY });
  const into = (slot: string, why: MoveReason, one: Part = part, owner: 'theirs' | 'rig' = 'theirs') => {
    const known = aMachine({ belongsIn: { A1: part.id } });
    const machine = () => (owner === 'rig' ? { ...known, owner: null } : known);
    return targetProblem(moveView(one, { machine }), one, aMove(one, inSlot(slot), { why }))?.refused ?? null;
  };

  it('is asked why by hand and at fitting, and a reason that is given is enough', () => {
    for (const by of ['hand', 'fitting'] as const) {
      expect(into('A2', { by })).toBe('not-its-own-slot');
      expect(into('A2', { by, says: 'A1 is dead' })).toBeNull();
      expect(into('A1', { by })).toBeNull();
    }
  });

  it.each<MoveReason>([
    { by: 'step', step: 's', run: 'r' },
    { by: 'proof', run: 'r' },
    { by: 'back-to-worked', run: 'r' },
    { by: 'wrong-slot-put-right' },
    { by: 'board-has-only-these' },
    { by: 'righting', says: 'was written down wrongly' },
  ])('says itself why by $by', (why) => {
    expect(into('A2', why)).toBeNull();
  });

  it('has none to go by in our rig, nor where it belongs in none here', () => {
    expect(into('A2', { by: 'hand' }, part, 'rig')).toBeNull();
    expect(into('A2', { by: 'hand' }, aPart({ id: 'new' as PartId, place: TRAY }))).toBeNull();
    expect(into('A2', { by: 'hand' }, ours({ id: part.id, place: BIN }))).toBeNull();
  });
});

it('a slot of a machine that nobody knows takes nothing', () => {
  const view = moveView(aPart(), { machine: () => null });
  expect(targetProblem(view, aPart(), aMove(aPart(), inSlot('A2')))?.refused).toBe('no-such-machine');
});
