import { describe, expect, it } from 'vitest';
import type { Part } from '../../../core/custody/ledger.ts';
import type { PartId } from '../../../core/ids.ts';
import type { Job } from '../../../core/job/job.ts';
import { aMachine, aPart, BIN, inSlot, MACHINE, NOON, ours, TRAY } from '../../../tests/builders/custody.ts';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import { aJobSheet } from '../../../tests/builders/jobSheet.ts';
import { catalogue } from '../../catalogue.ts';
import { wordsOf } from '../../kit/text/wordsOf.ts';
import { type Blamed, insideSlots, placeOfDrop, placesFor } from './insideOf.ts';

const words = wordsOf({ catalogue, locale: 'en-GB', zone: 'Europe/London', now: () => 0 });
const nobody: Blamed = { kinds: new Set(), named: null };
const benched = (parts: readonly Part[], machine = aMachine(), job: Partial<Job> = {}) =>
  aJobSheet('tracing', job, parts, machine);
const A1 = (...given: Parameters<typeof benched>) => insideSlots(benched(...given), nobody, words)[0];

describe('a slot in the drawing', () => {
  it('holds what is in it, and shows what belongs there and is out', () => {
    const [loaner, module] = [ours({ place: inSlot('A1') }), aPart({ place: TRAY })];
    const slot = A1([loaner, module], aMachine({ inside: { A1: loaner.id }, belongsIn: { A1: module.id } }));
    expect(slot).toMatchObject({ holds: { id: 'ours', whose: 'shop' }, away: { id: 'module', where: '1' } });
  });

  it('shows nothing as out that sits in another slot', () => {
    const module = aPart({ place: inSlot('A2') });
    expect(A1([module], aMachine({ belongsIn: { A1: module.id }, inside: { A2: module.id } }))?.away).toBeNull();
  });

  it('is known to be empty only once somebody looked', () => {
    expect(A1([])?.seen).toBe(false);
    const looked = { what: 'census', endedAt: NOON } as Job['work'][number];
    expect(A1([], aMachine(), { work: [looked] })?.seen).toBe(true);
  });
});

describe('a part in the drawing', () => {
  const module = aPart({ standing: { is: 'unproved', why: 'census' } });
  const stands = (blame: Blamed, part = module) =>
    insideSlots(benched([part], aMachine({ inside: { A1: part.id } })), blame, words)[0]?.holds?.standing;
  it('is dead before it is named, named before suspect', () => {
    const all: Blamed = { kinds: new Set(['dimm']), named: 'module' };
    expect(stands(all, aPart({ standing: { is: 'dead', how: 'shorted' } }))).toBe('dead');
    expect(stands(all)).toBe('named');
    expect(stands({ ...all, named: null })).toBe('suspect');
    expect(stands(nobody)).toBe('plain');
  });
  it('of ours is never the suspect', () => {
    expect(stands({ kinds: new Set(['dimm']), named: null }, ours({ place: inSlot('A1') }))).toBe('plain');
  });
});

describe('a part of which only its place is known', () => {
  const known = (part: Part) =>
    insideSlots(benched([part], aMachine({ inside: { A1: part.id } })), nobody, words)[0]?.holds?.known;
  it('is so by what was written down, whatever it is called', () => {
    expect(known(aPart({ unread: true }))).toBe(false);
    expect(known(aPart({ name: 'board of unknown make, read by its label' }))).toBe(true);
  });
});

describe('where a part can be put down', () => {
  const ids = (parts: readonly Part[]) =>
    placesFor(benched(parts), ['bench 1', 'bench 2'], '1', nobody, words).map(({ id }) => id);
  it('is the tray and the first bench; another bench only while something lies on it', () => {
    expect(ids([aPart()])).toEqual(['tray/1', 'bench/bench 1']);
    expect(ids([aPart({ place: { at: 'bench', bench: 'bench 2', job: null } })])).toContain('bench/bench 2');
  });
  it('is its bin only for ours, while it is out', () => {
    expect(ids([ours({ place: inSlot('A1') })])).toContain('home');
    expect(ids([ours()])).not.toContain('home');
  });
});

it('a drop becomes the ledger’s place, and none where the part has no bin', () => {
  const sheet = benched([]);
  expect(placeOfDrop({ to: 'slot', slot: 'A2' }, aPart(), sheet)).toEqual({ at: 'slot', machine: MACHINE, slot: 'A2' });
  expect(placeOfDrop({ to: 'place', place: 'tray/1/b' }, aPart(), sheet)).toEqual({
    at: 'tray',
    tray: '1/b',
    job: aJobAt('tracing').id,
  });
  expect(placeOfDrop({ to: 'place', place: 'home' }, ours(), sheet)).toEqual(BIN);
  expect(placeOfDrop({ to: 'place', place: 'home' }, aPart(), sheet)).toBeNull();
  expect(placeOfDrop({ to: 'place', place: 'elsewhere' }, aPart({ id: 'x' as PartId }), sheet)).toBeNull();
});
