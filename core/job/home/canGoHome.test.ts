import { describe, expect, it } from 'vitest';
import {
  aMachine,
  aPart,
  BIN,
  DAY,
  inSlot,
  JOB,
  type MACHINE,
  NOON,
  ours,
  TRAY,
} from '../../../tests/builders/custody.ts';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { Part } from '../../custody/ledger.ts';
import type { Machine } from '../../custody/machine.ts';
import type { PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { canGoHome } from './canGoHome.ts';

const whatIsMissing = (parts: readonly Part[], job: Partial<Job> = {}, machine: Partial<Machine> = {}) =>
  canGoHome(
    aJobAt('ready', { parts: parts.map(({ id }) => id), ...job }),
    aMachine(machine),
    new Map(parts.map((part) => [part.id, part])),
  );
const why = (...given: Parameters<typeof whatIsMissing>) => whatIsMissing(...given).map((one) => one.why);

describe('a machine goes home', () => {
  it('with every part of the owner’s inside and nothing of ours', () => {
    expect(whatIsMissing([aPart(), ours()])).toEqual([]);
  });

  it('not with a loaner on trial inside, and says in which slot it sits', () => {
    const loaner = ours({ place: inSlot('A2'), title: { as: 'on-trial', job: JOB } });
    expect(whatIsMissing([aPart(), loaner])).toMatchObject([{ why: 'part-on-trial-inside', part: 'ours', slot: 'A2' }]);
  });

  it('with what is lent to the owner', () => {
    const lent = ours({ place: inSlot('A2'), title: { as: 'lent', job: JOB, returnBy: epochMs(NOON + DAY) } });
    expect(why([lent])).toEqual([]);
  });

  it('not with one part of theirs on the tray, lying about, or in another machine', () => {
    for (const place of [TRAY, BIN, { at: 'slot', machine: 'machine-2' as typeof MACHINE, slot: 'A1' } as const])
      expect(why([aPart({ place })])).toEqual(['owners-part-not-inside']);
  });

  it('with a part that the owner has in hand, or that went with another that is inside', () => {
    expect(why([aPart({ place: { at: 'with-owner' } })])).toEqual([]);
    const lead = aPart({ id: 'lead' as PartId, kind: 'lead', place: { at: 'with', part: 'module' as PartId } });
    expect(why([aPart(), lead])).toEqual([]);
  });

  it('not with a lead of ours on their supply, though the supply is inside', () => {
    const supply = aPart({ id: 'supply' as PartId, kind: 'supply', place: inSlot('supply') });
    const lead = ours({ kind: 'lead', place: { at: 'with', part: supply.id } });
    expect(why([supply, lead])).toEqual(['part-on-trial-inside']);
  });

  it('not while a drive is away without an answer of its own', () => {
    const drive = aPart({ kind: 'drive', dataBearing: true, place: TRAY });
    expect(why([drive])).toEqual(['needs-own-answer']);
  });

  it('not while a part is out to be tested, though the owner agreed to that', () => {
    const away = aPart({ place: { at: 'away', kind: 'laboratory', name: 'the lab' } });
    const options = [{ id: 'yes', says: '', agrees: { daysAway: 'send-out', dead: null } }];
    const questions = [{ options, answer: { options: ['yes'] }, withdrawn: false }] as unknown as Job['questions'];
    expect(why([away], { questions })).toEqual(['owners-part-not-inside']);
  });

  it('not without a drive that was lost here: no answer could be given for it', () => {
    const lost = aPart({ dataBearing: true, place: { at: 'not-found', since: NOON, lastSeen: '1' } });
    expect(why([lost])).toEqual(['owners-part-not-inside']);
  });

  it('without a part that was lost here, once the owner was told', () => {
    const lost = aPart({ place: { at: 'not-found', since: NOON, lastSeen: '1' } });
    const incident = {
      id: 'i',
      what: {} as never,
      part: lost.id,
      cause: 'unknown',
      photographs: [],
      costMinor: 0,
      at: NOON,
    };
    const incidents = (told: boolean) => [{ ...incident, told }] as unknown as Job['incidents'];
    expect(why([lost], { incidents: incidents(false) })).toEqual(['owners-part-not-inside', 'incident-not-told']);
    expect(why([lost], { incidents: incidents(true) })).toEqual([]);
  });

  it('not with a thing of ours on it, nor with something left unplugged', () => {
    expect(why([], { shopItemsOn: [{ thing: 'dust filter', count: 1 }] })).toEqual(['ours-on-machine']);
    expect(why([aPart()], {}, { unplugged: ['A1'], inside: { A1: 'module' as PartId } })).toEqual(['still-unplugged']);
    expect(why([aPart()], {}, { unplugged: ['A2'] })).toEqual([]);
  });
});
