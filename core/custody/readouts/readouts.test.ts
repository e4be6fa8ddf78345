import { describe, expect, it } from 'vitest';
import { aMachine, aPart, BIN, DAY, inSlot, JOB, NOON, ours, TRAY } from '../../../tests/builders/custody.ts';
import type { PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import { inAgainstOut } from './inAgainstOut.ts';
import { keptNow } from './kept.ts';
import { partsOut } from './partsOut.ts';

describe('parts of ours that are out', () => {
  it('are those on trial, lent, away and lying about; not what hangs in its bin, sits in the rig, is gone or rides along', () => {
    const out = [
      ours({ id: 'trial' as PartId, place: inSlot('A1'), title: { as: 'on-trial', job: JOB } }),
      ours({ id: 'away' as PartId, place: { at: 'away', kind: 'maker', name: 'maker' }, since: epochMs(NOON + 1) }),
      ours({ id: 'about' as PartId, place: TRAY, since: epochMs(NOON + 2) }),
    ];
    const home = [
      ours(),
      ours({ place: { at: 'rig', rig: 'rig', slot: 'A1' } }),
      ours({ place: { at: 'gone', why: 'sold' } }),
      ours({ place: { at: 'with', part: 'supply' as PartId } }),
      aPart(),
    ];
    expect(partsOut([...home, ...out], NOON).map(({ part, as, job }) => [part, as, job])).toEqual([
      ['trial', 'on-trial', JOB],
      ['away', 'away', null],
      ['about', 'about', JOB],
    ]);
  });

  it('that are past their day come first, then the longest out', () => {
    const lent = (id: string, since: number, back: number) =>
      ours({
        id: id as PartId,
        place: { at: 'with-owner' },
        since: epochMs(NOON + since),
        title: { as: 'lent', job: JOB, returnBy: epochMs(NOON + back) },
      });
    const told = partsOut([lent('long', 0, 9), lent('late', 5, 1), lent('short', 3, 9)], epochMs(NOON + 2));
    expect(told.map(({ part, overdue }) => [part, overdue])).toEqual([
      ['late', true],
      ['long', false],
      ['short', false],
    ]);
  });

  it('are not overdue on the day itself', () => {
    const part = ours({ place: TRAY, title: { as: 'lent', job: JOB, returnBy: NOON } });
    expect(partsOut([part], NOON)[0]?.overdue).toBe(false);
  });
});

describe('a kept part', () => {
  const until = epochMs(NOON + DAY);
  const kept = (dataBearing = false) => aPart({ dataBearing, place: { at: 'kept', shelf: 'K', until } });
  it('may be given back at any time, and recycled from its day on', () => {
    expect(keptNow(kept(), JOB, NOON)).toMatchObject({ due: false, may: ['give-back'] });
    expect(keptNow(kept(), JOB, until)).toMatchObject({ due: true, may: ['recycle', 'give-back'] });
  });
  it('that holds data is never simply recycled', () => {
    expect(keptNow(kept(true), JOB, epochMs(until + DAY))?.may).toEqual(['give-back', 'destroy-by-own-word']);
  });
  it('is told of only while it is kept', () => {
    expect(keptNow(aPart({ place: BIN }), JOB, NOON)).toBeNull();
  });
});

describe('inside at taking-in against now', () => {
  it('shows slot by slot what came, what is there now, and where what came out is', () => {
    const [module, loaner] = [aPart({ place: TRAY }), ours({ place: inSlot('A1') })];
    const machine = aMachine({ atTakingIn: { A1: module.id }, inside: { A1: loaner.id } });
    const parts = new Map([module, loaner].map((part) => [part.id, part]));
    expect(inAgainstOut(machine, parts)).toMatchObject([
      { slot: 'A1', same: false, came: { part: module.id, whose: 'owner', is: TRAY }, now: { whose: 'shop' } },
    ]);
  });
  it('says the same where nothing changed, and leaves out slots that were and are empty', () => {
    const module = aPart();
    const machine = aMachine({ atTakingIn: { A1: module.id }, inside: { A1: module.id } });
    expect(inAgainstOut(machine, new Map([[module.id, module]]))).toMatchObject([{ slot: 'A1', same: true }]);
  });
});
