import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aJobAt } from '../../tests/builders/jobAt.ts';
import type { Part } from '../custody/ledger.ts';
import type { Machine } from '../custody/machine.ts';
import { type Place, samePlace } from '../custody/place.ts';
import type { MachineId, PartId } from '../ids.ts';
import type { Job } from './job.ts';
import type { TriedArrangement } from './triedArrangement.ts';
import { gotWorse, isThere, lastWorked, nothingToDo, returnMoves } from './triedArrangements.ts';

const SLOTS = ['A1', 'A2', 'B1', 'B2'];
const machine = 'm' as MachineId;
const tray = { at: 'tray', tray: 'T', job: 'j' } as Extract<Place, { readonly at: 'tray' }>;
const bin: Place = { at: 'bin', bin: 'B4' };
const inSlot = (slot: string): Place => ({ at: 'slot', machine, slot });

/** The machine and its parts, each named part in the slot given for it, ours in its bin, theirs on the tray else. */
function standing(inside: Readonly<Record<string, string>>, unplugged: readonly string[] = []) {
  const parts = ['own1', 'own2', 'own3', 'ours'].map((id) => {
    const slot = Object.entries(inside).find(([, part]) => part === id)?.[0];
    const ours = id === 'ours';
    const place = slot ? inSlot(slot) : ours ? bin : tray;
    return {
      id,
      name: id,
      belongs: { to: ours ? 'shop' : 'owner' },
      place,
      home: ours ? bin : null,
    } as unknown as Part;
  });
  return { machine: { id: machine, inside, unplugged } as unknown as Machine, parts };
}
const tried = (
  run: string,
  did: TriedArrangement['did'],
  inside: Readonly<Record<string, string>>,
): Job['arrangements'][number] =>
  ({ run, did, inside, unplugged: [], at: 0 }) as unknown as Job['arrangements'][number];
const jobOf = (all: readonly Job['arrangements'][number][], struck: readonly string[] = []) =>
  aJobAt('tracing', {
    arrangements: all,
    work: all.map(({ run }) => ({
      run,
      struck: struck.includes(run) ? { why: '', at: 0 } : null,
    })) as unknown as Job['work'],
  });

describe('the last arrangement that worked', () => {
  const withOurs = { A2: 'ours' };
  const asItCame = { A2: 'own1', B2: 'own2' };
  it('is the one of the trial, whatever was tried since in others', () => {
    const job = jobOf([tried('1', 'works', withOurs), tried('2', 'worse', asItCame)]);
    expect(lastWorked(job)?.run).toBe('1');
    expect(gotWorse(job)).toBe(true);
  });
  it('is the newest of two, and an older one where the newest failed since', () => {
    const job = (...more: readonly Job['arrangements'][number][]) =>
      jobOf([tried('1', 'works', withOurs), tried('2', 'works', asItCame), ...more]);
    expect(lastWorked(job())?.run).toBe('2');
    expect(lastWorked(job(tried('3', 'works', asItCame)))?.run).toBe('3');
    expect(lastWorked(job(tried('3', 'same', asItCame)))?.run).toBe('1');
  });
  it('is none once it failed in the very same one, and none that was struck out', () => {
    expect(lastWorked(jobOf([tried('1', 'works', asItCame), tried('2', 'same', asItCame)]))).toBeNull();
    expect(lastWorked(jobOf([tried('1', 'works', asItCame)], ['1']))).toBeNull();
  });
});

describe('the way back', () => {
  it('is not there while a part of it is out of reach, though there is nothing that hands could do', () => {
    const there = standing({ A1: 'own1' });
    const parts = there.parts.map((part) =>
      part.id === 'own2' ? { ...part, place: { at: 'with-owner' } as const } : part,
    );
    const inside = { A1: 'own1' as PartId, B1: 'own2' as PartId };
    const way = returnMoves(there.machine, parts, { inside, unplugged: [] }, tray);
    expect([nothingToDo(way), isThere(way), way.outOfReach]).toEqual([true, false, ['own2']]);
  });

  it('takes ours to its bin, theirs to the tray, and puts back what sat there, nothing else', () => {
    const now = standing({ A1: 'own3', A2: 'ours', B2: 'own2' });
    const back = returnMoves(
      now.machine,
      now.parts,
      { inside: { A2: 'own1' as PartId, B2: 'own2' as PartId }, unplugged: [] },
      tray,
    );
    expect(back.moves).toEqual([
      { part: 'own3', from: inSlot('A1'), to: tray },
      { part: 'ours', from: inSlot('A2'), to: bin },
      { part: 'own1', from: tray, to: inSlot('A2') },
    ]);
  });
  it('says which part is no longer in reach, and moves nothing of it', () => {
    const now = standing({});
    const parts = now.parts.map((part) =>
      part.id === ('own1' as PartId) ? { ...part, place: { at: 'with-owner' } as Place } : part,
    );
    const back = returnMoves(now.machine, parts, { inside: { A2: 'own1' as PartId }, unplugged: [] }, tray);
    expect([back.moves, back.outOfReach]).toEqual([[], ['own1']]);
  });
  it('plugs in and unplugs as it was then', () => {
    const now = standing({ A2: 'own1', B2: 'own2' }, ['A2']);
    const back = returnMoves(now.machine, now.parts, { inside: now.machine.inside, unplugged: ['B2'] }, tray);
    expect([back.moves, back.plugIn, back.unplug]).toEqual([[], ['A2'], ['B2']]);
  });

  const arrangement = fc
    .shuffledSubarray(['own1', 'own2', 'own3', 'ours'])
    .chain((parts) =>
      fc
        .shuffledSubarray(SLOTS, { minLength: parts.length, maxLength: parts.length })
        .map((slots) => Object.fromEntries(slots.map((slot, i) => [slot, parts[i] ?? '']))),
    );
  it('leads from any arrangement to any other: each move from where the part is, into a slot that is free', () => {
    fc.assert(
      fc.property(arrangement, arrangement, (from, to) => {
        const now = standing(from);
        const inside = { ...to } as unknown as TriedArrangement['inside'];
        const { moves } = returnMoves(now.machine, now.parts, { inside, unplugged: [] }, tray);
        const places = new Map(now.parts.map((part) => [part.id, part.place]));
        for (const move of moves) {
          expect(samePlace(places.get(move.part) as Place, move.from)).toBe(true);
          if (move.to.at === 'slot')
            expect([...places.values()].some((place) => samePlace(place, move.to))).toBe(false);
          places.set(move.part, move.to);
        }
        const after = Object.fromEntries(
          [...places].flatMap(([part, place]) => (place.at === 'slot' ? [[place.slot, part]] : [])),
        );
        expect(after).toEqual(to);
        const there = standing(to);
        expect(isThere(returnMoves(there.machine, there.parts, { inside, unplugged: [] }, tray))).toBe(true);
      }),
    );
  });
});
