import { describe, expect, it } from 'vitest';
import {
  aMove,
  aPart,
  BIN,
  inSlot,
  JOB,
  type MACHINE,
  moveView,
  NOON,
  ours,
  TRAY,
} from '../../../tests/builders/custody.ts';
import type { JobId, OwnerId, PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { Part } from '../ledger.ts';
import type { Place } from '../place.ts';
import { leavingProblem } from './mayLeave.ts';
import type { Move, MoveView } from './move.ts';

const why = (part: Part, to: Place, says: Partial<Move> = {}, view: Partial<MoveView> = {}, ...others: Part[]) =>
  leavingProblem(moveView(part, view, others), part, aMove(part, to, says))?.refused ?? null;

const other = 'job-2' as JobId;

describe('a part that is held', () => {
  it('leaves for the job it is held for', () => {
    const held = ours({ reservedFor: JOB, reserved: { at: NOON, by: 'ada' } });
    expect(why(held, TRAY)).toBeNull();
    expect(why(held, TRAY, { job: other })).toBe('part-reserved');
  });

  it('since before anybody wrote down who holds it says since when it lies there', () => {
    const part = ours({ reservedFor: other, reserved: null, since: epochMs(5), movedBy: 'bo' });
    expect(leavingProblem(moveView(part), part, aMove(part, TRAY))).toMatchObject({ since: 5, by: 'bo' });
    const held = { ...part, reserved: { at: epochMs(7), by: 'ada' } };
    expect(leavingProblem(moveView(held), held, aMove(held, TRAY))).toMatchObject({ since: 7, by: 'ada' });
  });

  it('holds back the one it rides along with', () => {
    const lead = ours({ id: 'lead' as PartId, kind: 'lead', reservedFor: other });
    const supply = ours({ kind: 'supply', riders: [lead.id] });
    expect(why(supply, TRAY, {}, {}, lead)).toBe('part-reserved');
  });
});

describe('a part of ours that a job has', () => {
  const lies: readonly Place[] = [
    { at: 'tray', tray: '1', job: other },
    { at: 'bench', bench: '1', job: other },
  ];
  it.each(lies)('in its $at stays with it, for every other job', (place) => {
    expect(why(ours({ place }), inSlot('A1'))).toBe('part-out');
    expect(why(ours({ place }), inSlot('A1'), { job: other })).toBeNull();
  });

  it('may be tidied away by nobody’s job, but not out of a machine in which it is on trial', () => {
    expect(why(ours({ place: { at: 'tray', tray: '1', job: other } }), BIN, { job: null })).toBeNull();
    const trial = ours({ place: inSlot('A1'), title: { as: 'on-trial', job: other } });
    expect(why(trial, BIN, { job: null })).toBe('part-out');
  });
});

describe('a part of theirs', () => {
  it('is touched for their own job, or where no job is about it', () => {
    const theirs = aPart({ belongs: { to: 'owner', owner: 'owner-2' as OwnerId } });
    expect(why(theirs, TRAY)).toBe('not-this-jobs-part');
    expect(why(theirs, TRAY, {}, { owner: null })).toBeNull();
  });
});

describe('a part that is missed', () => {
  it('is not missed anew: it stays so since the first time', () => {
    const missed = aPart({ place: { at: 'not-found', since: NOON, lastSeen: 'A1' } });
    expect(why(missed, { at: 'not-found', since: epochMs(NOON + 1), lastSeen: '' })).toBe('part-there-already');
    expect(why(missed, TRAY)).toBeNull();
  });
});

describe('what rides along', () => {
  const gone = aPart({ id: 'supply' as PartId, kind: 'supply', place: { at: 'gone', why: 'recycled' } });
  it('is where the other is: gone with it, or in a machine that is not on this bench', () => {
    const lead = aPart({ id: 'lead' as PartId, kind: 'lead', place: { at: 'with', part: gone.id } });
    expect(why(lead, TRAY, {}, {}, gone)).toBe('part-gone');
    const inside = { ...gone, place: { at: 'slot', machine: 'machine-2' as typeof MACHINE, slot: 'supply' } as const };
    expect(why(lead, TRAY, {}, {}, inside)).toBe('in-another-machine');
    expect(why(lead, TRAY, {}, {}, { ...gone, place: inSlot('supply') })).toBeNull();
  });
});
