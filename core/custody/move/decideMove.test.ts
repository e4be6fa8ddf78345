import { describe, expect, it } from 'vitest';
import {
  aMachine,
  aMove,
  aPart,
  BIN,
  DAY,
  inSlot,
  JOB,
  MACHINE,
  moveView,
  NOON,
  ours,
  TRAY,
} from '../../../tests/builders/custody.ts';
import type { JobId, OwnerId, PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { Part } from '../ledger.ts';
import type { Place } from '../place.ts';
import { decideMove } from './decideMove.ts';
import type { Move, MoveView } from './move.ts';

const decide = (view: MoveView, move: Move) => decideMove(view, move, NOON, 'kim');
const refused = (view: MoveView, move: Move) => {
  const decision = decide(view, move);
  return decision.ok ? null : decision.refusal.refused;
};
const entries = (view: MoveView, move: Move) => {
  const decision = decide(view, move);
  return decision.ok ? decision.entries.map(({ kind, body }) => ({ kind, body })) : decision.refusal;
};
const shelf: Place = { at: 'kept', shelf: 'K', until: epochMs(NOON + DAY) };
const gone: Place = { at: 'gone', why: 'recycled' };

describe('leaving', () => {
  it('a part moves only from the place it is in, and who has it is said', () => {
    const part = aPart({ place: TRAY, movedBy: 'ada' });
    expect(decide(moveView(part), aMove(part, BIN, { from: inSlot('A1') }))).toMatchObject({
      refusal: { refused: 'part-not-there', is: TRAY, movedBy: 'ada' },
    });
  });

  it('a part that nobody knows does not move', () => {
    expect(refused(moveView(null), aMove(aPart(), TRAY))).toBe('no-such-part');
  });

  it('a part is not moved to where it is', () => {
    const part = aPart();
    expect(refused(moveView(part), aMove(part, part.place))).toBe('part-there-already');
  });

  it('what is gone comes back only by a move that says what it rights', () => {
    const part = aPart({ place: gone });
    expect(refused(moveView(part), aMove(part, TRAY))).toBe('part-gone');
    expect(refused(moveView(part), aMove(part, TRAY, { why: { by: 'righting', says: '' } }))).toBe(
      'righting-says-nothing',
    );
    expect(
      refused(moveView(part), aMove(part, TRAY, { why: { by: 'righting', says: 'wrong bin emptied' } })),
    ).toBeNull();
  });

  it('the first of two who want a loaner has it', () => {
    const elsewhere = ours({ place: inSlot('A2'), title: { as: 'on-trial', job: 'job-2' as JobId } });
    expect(decide(moveView(elsewhere), aMove(elsewhere, BIN))).toMatchObject({
      refusal: { refused: 'part-out', heldBy: 'job-2' },
    });
    const held = ours({ reservedFor: 'job-2' as JobId, reserved: { at: NOON, by: 'ada' } });
    expect(decide(moveView(held), aMove(held, inSlot('A2')))).toMatchObject({
      refusal: { refused: 'part-reserved', heldBy: 'job-2', by: 'ada' },
    });
  });

  it('a part of another owner is not touched for this job', () => {
    const part = aPart({ belongs: { to: 'owner', owner: 'owner-2' as OwnerId } });
    expect(refused(moveView(part), aMove(part, TRAY))).toBe('not-this-jobs-part');
  });

  it('a part inside a machine that is not on this bench stays there', () => {
    const part = aPart({ place: { at: 'slot', machine: 'machine-2' as typeof MACHINE, slot: 'A1' } });
    expect(refused(moveView(part), aMove(part, TRAY))).toBe('in-another-machine');
  });
});

describe('ours in an owner’s machine', () => {
  it('goes in on trial, and the machine writes down its slot without its belonging there', () => {
    const part = ours();
    expect(entries(moveView(part), aMove(part, inSlot('A2')))).toMatchObject([
      { kind: 'part-moved', body: { title: { as: 'on-trial', job: JOB } } },
      { kind: 'slot-filled', body: { slot: 'A2', part: part.id, belongs: false } },
    ]);
  });

  it('does not go in without the owner’s leave for trials', () => {
    const part = ours();
    expect(decide(moveView(part, { trialAllowed: false }), aMove(part, inSlot('A2')))).toMatchObject({
      refusal: { refused: 'no-word-for-trial-parts', needs: 'own-parts-in' },
    });
  });

  it('does not go in for no job', () => {
    const part = ours();
    expect(refused(moveView(part), aMove(part, inSlot('A2'), { job: null }))).toBe('shop-part-needs-job');
  });

  it('that was agreed goes in for good, and belongs there', () => {
    const part = ours();
    expect(entries(moveView(part, { agreedFor: true, trialAllowed: false }), aMove(part, inSlot('A2')))).toMatchObject([
      { kind: 'part-moved', body: { title: null } },
      { kind: 'slot-filled', body: { belongs: true } },
    ]);
  });

  it('that is lent goes with its day, and to the owner only lent', () => {
    const part = ours();
    const returnBy = epochMs(NOON + 7 * DAY);
    expect(refused(moveView(part), aMove(part, { at: 'with-owner' }))).toBe('shop-part-not-lent');
    expect(entries(moveView(part), aMove(part, { at: 'with-owner' }, { returnBy }))).toMatchObject([
      { body: { title: { as: 'lent', job: JOB, returnBy } } },
    ]);
    const lent = ours({ place: TRAY, title: { as: 'lent', job: JOB, returnBy } });
    expect(entries(moveView(lent), aMove(lent, inSlot('A2')))).toMatchObject([{ body: { title: { as: 'lent' } } }, {}]);
  });
});

describe('what is left behind', () => {
  it('the slot it came out of is written down empty, by the part that sat in it', () => {
    const part = aPart();
    expect(decide(moveView(part), aMove(part, TRAY))).toMatchObject({
      entries: [
        { stream: `part:${part.id}`, kind: 'part-moved' },
        { stream: `machine:${MACHINE}`, kind: 'slot-emptied', body: { slot: 'A1', part: part.id } },
      ],
    });
    expect(entries(moveView(part), aMove(part, inSlot('A2')))).toMatchObject([
      { kind: 'part-moved' },
      { kind: 'slot-emptied', body: { slot: 'A1' } },
      { kind: 'slot-filled', body: { slot: 'A2' } },
    ]);
  });

  it('no slot is, where it lay in none', () => {
    const part = aPart({ place: TRAY });
    expect(entries(moveView(part), aMove(part, { at: 'bench', bench: '1', job: JOB }))).toMatchObject([
      { kind: 'part-moved' },
    ]);
  });

  it('a lead that leaves its supply is written down there', () => {
    const supply = aPart({ id: 'supply' as PartId, kind: 'supply', place: TRAY });
    const lead = aPart({ id: 'lead' as PartId, kind: 'lead', place: { at: 'with', part: supply.id } });
    expect(decide(moveView(lead, {}, [supply]), aMove(lead, TRAY))).toMatchObject({
      entries: [{ kind: 'part-moved' }, { stream: 'part:supply', kind: 'rider-left', body: { part: 'lead' } }],
    });
  });
});

describe('the owner’s word for a part', () => {
  const word = (answer: 'back' | 'keep' | 'send' | 'scrap', more = {}) => ({
    word: { answer, destroy: false, outAndBack: false, ...more },
  });
  it.each([
    ['keep', shelf],
    ['send', { at: 'away', kind: 'maker', name: 'maker' }],
    ['scrap', gone],
  ] as const)('"%s" opens just its own place', (answer, place) => {
    const part = aPart({ place: TRAY });
    expect(refused(moveView(part, word(answer)), aMove(part, place))).toBeNull();
    for (const other of (['back', 'keep', 'send', 'scrap'] as const).filter((one) => one !== answer))
      expect(refused(moveView(part, word(other)), aMove(part, place))).toBe('no-word-for-part');
  });

  it('nothing of theirs is sold or given away, whatever they said', () => {
    const part = aPart({ place: TRAY });
    for (const answer of ['back', 'keep', 'send', 'scrap'] as const)
      for (const why of ['sold', 'given', 'returned'] as const)
        expect(refused(moveView(part, word(answer)), aMove(part, { at: 'gone', why }))).toBe('no-word-for-part');
  });

  it('what was kept up to its day may be recycled after it, and not before', () => {
    const due = aPart({ place: { at: 'kept', shelf: 'K', until: NOON } });
    const early = aPart({ place: shelf });
    expect(refused(moveView(due, word('keep')), aMove(due, gone))).toBeNull();
    expect(refused(moveView(early, word('keep')), aMove(early, gone))).toBe('no-word-for-part');
  });
});

describe('the place it goes to', () => {
  it('a slot holds one part, and names what sits in it', () => {
    const [part, sitting] = [ours(), aPart()];
    const machine = () => aMachine({ inside: { A1: sitting.id } });
    expect(decide(moveView(part, { machine }, [sitting]), aMove(part, inSlot('A1')))).toMatchObject({
      refusal: { refused: 'slot-occupied', slot: 'A1', by: 'module' },
    });
  });

  it('a slot takes its own kind, and has to be there', () => {
    const part = ours();
    expect(refused(moveView(part), aMove(part, inSlot('x16')))).toBe('wrong-kind-for-slot');
    expect(refused(moveView(part), aMove(part, inSlot('A9')))).toBe('no-such-slot');
  });

  it('theirs goes back where it was, or the move says why not', () => {
    const part = aPart({ place: TRAY });
    const machine = () => aMachine({ belongsIn: { A1: part.id } });
    const fitting = (slot: string, says?: string): Move =>
      aMove(part, inSlot(slot), { why: { by: 'fitting', ...(says !== undefined && { says }) } });
    expect(decide(moveView(part, { machine }), fitting('A2'))).toMatchObject({
      refusal: { refused: 'not-its-own-slot', recorded: 'A1', slot: 'A2' },
    });
    expect(refused(moveView(part, { machine }), fitting('A1'))).toBeNull();
    expect(entries(moveView(part, { machine }), fitting('A2', 'A1 is dead'))).toMatchObject([
      { kind: 'part-moved' },
      { kind: 'slot-filled', body: { belongs: true } },
    ]);
  });

  it('theirs settles in another slot where it was put right, and sits there for now after a trial', () => {
    const part = aPart({ place: TRAY });
    const machine = () => aMachine({ belongsIn: { A1: part.id } });
    const settles = (why: Move['why'], slot = 'A2') =>
      entries(moveView(part, { machine }), aMove(part, inSlot(slot), { why }));
    for (const by of ['wrong-slot-put-right', 'board-has-only-these'] as const)
      expect(settles({ by })).toMatchObject([{}, { kind: 'slot-filled', body: { belongs: true } }]);
    expect(settles({ by: 'step', step: 's', run: 'r' })).toMatchObject([{}, { body: { belongs: false } }]);
    expect(settles({ by: 'hand', says: 'A1 is dead' })).toMatchObject([{}, { body: { belongs: false } }]);
    expect(settles({ by: 'fitting' }, 'A1')).toMatchObject([{}, { body: { belongs: false } }]);
  });

  it('not found says where it was last seen, and since when', () => {
    const part = aPart({ place: TRAY });
    const missed: Place = { at: 'not-found', since: epochMs(0), lastSeen: '' };
    expect(entries(moveView(part), aMove(part, missed))).toMatchObject([
      { body: { to: { at: 'not-found', since: NOON, lastSeen: '1' } } },
    ]);
  });
});

describe('parts that move as one', () => {
  const supply = (says: Partial<Part> = {}) =>
    aPart({ id: 'supply' as PartId, kind: 'supply', name: 'supply', place: TRAY, ...says });
  const lead = (says: Partial<Part> = {}) =>
    aPart({ id: 'lead' as PartId, kind: 'lead', name: 'lead', place: TRAY, ...says });
  const joins = (part: Part, carrier: Part) =>
    refused(moveView(part, {}, [carrier]), aMove(part, { at: 'with', part: carrier.id }));

  it('a lead goes with its supply, and both write it down', () => {
    const [one, carrier] = [lead(), supply()];
    expect(entries(moveView(one, {}, [carrier]), aMove(one, { at: 'with', part: carrier.id }))).toMatchObject([
      { kind: 'part-moved' },
      { kind: 'rider-joined', body: { part: 'lead' } },
    ]);
  });

  it('a lead goes with no supply but its own', () => {
    expect(joins(lead({ companion: 'other' as PartId }), supply())).toBe('lead-of-another-supply');
  });

  it('an assembly is one deep, of one owner, lies in one place, and takes no data along', () => {
    expect(joins(lead({ riders: ['x' as PartId] }), supply())).toBe('assembly-too-deep');
    expect(joins(lead(), supply({ place: { at: 'with', part: 'x' as PartId } }))).toBe('assembly-too-deep');
    expect(joins(lead(), supply({ belongs: { to: 'shop' } }))).toBe('assembly-of-two-owners');
    expect(joins(lead(), supply({ place: BIN }))).toBe('parts-lie-apart');
    expect(joins(aPart({ place: TRAY, dataBearing: true }), supply())).toBe('data-part-moves-alone');
  });
});
