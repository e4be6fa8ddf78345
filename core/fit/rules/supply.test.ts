import { describe, expect, it } from 'vitest';
import { herMachine, hers, wall } from '../../../tests/builders/harrowmouth.ts';
import type { PartFacts } from '../../custody/part.ts';
import type { MachineView } from '../machineView.ts';
import { supplyReasons } from './supply.ts';

const driven = (...drives: readonly PartFacts[]): MachineView => ({
  ...herMachine,
  parts: [
    ...herMachine.parts.filter(({ part }) => part.kind !== 'drive' && part.kind !== 'optical-drive'),
    ...drives.map((part, at) => ({ slot: `SATA ${at + 1}`, part })),
  ],
});
const sata = (machine: MachineView, leads = 1) =>
  supplyReasons({ ...wall.S05, attributes: { ...wall.S05.attributes, 'lead-sata': leads } }, machine).find(
    ({ fact }) => fact === 'sata-leads',
  );

describe('a supply’s SATA leads', () => {
  it('are asked for by the drives inside, each for one', () => {
    expect(sata(driven(hers.disk.part))).toMatchObject({ says: 'yes', part: 1, place: 1 });
    expect(sata(driven(hers.disk.part, hers.optical.part))).toMatchObject({ says: 'no', part: 2, place: 1 });
  });
  it('are no ground where no drive hangs on one, however few it has', () => {
    expect(sata(driven(), 0)).toBeUndefined();
    expect(sata(driven(hers.m2.part), 0)).toBeUndefined();
  });
});
