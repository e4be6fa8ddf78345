import { expect, it } from 'vitest';
import { BIN, inSlot, JOB, NOON, TRAY } from '../../tests/builders/custody.ts';
import type { JobId, MachineId } from '../ids.ts';
import { epochMs } from '../time.ts';
import { type Place, samePlace, slotOf } from './place.ts';

const tray = (job: string, name = '1'): Place => ({ at: 'tray', tray: name, job: job as JobId });
const away = (kind: 'supplier' | 'maker', name = 'Fennimore'): Place => ({ at: 'away', kind, name });

it.each<[string, Place, Place]>([
  ['the same tray of two jobs', tray('job-1'), tray('job-2')],
  ['two trays of one job', tray('job-1'), tray('job-1', '2')],
  ['a supplier and a maker of one name', away('supplier'), away('maker')],
  ['one slot of two machines', inSlot('A1'), { at: 'slot', machine: 'machine-2' as MachineId, slot: 'A1' }],
  ['two slots of one machine', inSlot('A1'), inSlot('A2')],
  ['a bin and a tray', BIN, TRAY],
])('%s are two places', (_, one, other) => {
  expect(samePlace(one, other)).toBe(false);
  expect(samePlace(one, one)).toBe(true);
});

it('a shelf is one place, up to whichever day, and a bench whoever works at it', () => {
  const kept = (until: number): Place => ({ at: 'kept', shelf: 'K', until: epochMs(until) });
  expect(samePlace(kept(NOON), kept(NOON + 1))).toBe(true);
  expect(samePlace({ at: 'bench', bench: '1', job: JOB }, { at: 'bench', bench: '1', job: null })).toBe(true);
});

it('a slot is one of a machine or of a rig, and nothing else has one', () => {
  expect(slotOf({ at: 'rig', rig: 'second rig', slot: 'A1' })).toEqual({ machine: 'second rig', slot: 'A1' });
  expect(slotOf(TRAY)).toBeNull();
});
