import { describe, expect, it } from 'vitest';
import type { Machine } from '../custody/machine.ts';
import type { PartFacts } from '../custody/part.ts';
import { slotPlanForBoard } from '../fit/slotPlan.ts';
import type { PartId } from '../ids.ts';
import { againstCensus } from './againstCensus.ts';
import { ownReportOf } from './ownReportOf.ts';
import { readMachineReport } from './readMachineReport.ts';
import { saidOf } from './readText.ts';

/** What its own tables say: a board, two modules of 8 GiB in the second places, two places empty. */
const REPORT = [
  'Handle 0x0002, DMI type 2, 15 bytes\nBase Board Information\n\tManufacturer: Aldermoor\n\tProduct Name: AM-B46',
  ...[
    ['A1', 'No Module Installed'],
    ['A2', '8 GB'],
    ['B1', 'No Module Installed'],
    ['B2', '8 GB'],
  ].map(
    ([slot, size], at) =>
      `Handle 0x001${at}, DMI type 17, 40 bytes\nMemory Device\n\tSize: ${size}\n\tLocator: DIMM_${slot}\n\tType: DDR4`,
  ),
  '',
].join('\n\n');
const report = ownReportOf(saidOf(readMachineReport(REPORT)));

const counted = (inside: Readonly<Record<string, readonly [PartFacts['kind'], string, PartFacts['attributes']?]>>) => {
  const { slots } = slotPlanForBoard({ 'form-factor': 'atx', 'dimm-slots': 4, 'memory-channels': 2 });
  const parts = new Map(
    Object.entries(inside).map(([slot, [kind, name, attributes = {}]]) => [
      slot as PartId,
      { id: slot, kind, name, attributes } as unknown as PartFacts,
    ]),
  );
  const belongsIn = Object.fromEntries([...parts.keys()].map((id) => [id, id]));
  const machine = { slots, belongsIn, atTakingIn: belongsIn, report } as Pick<
    Machine,
    'slots' | 'belongsIn' | 'atTakingIn' | 'report'
  >;
  return { machine, parts };
};
const said = ({ machine, parts }: ReturnType<typeof counted>) =>
  againstCensus(machine, parts).map(({ about, slot, is }) => `${slot ?? about} ${is}`);

const eight = { capacity: 8 };

describe('the census against what the machine says of itself', () => {
  it('agrees where the report names what was counted', () => {
    const same = counted({
      board: ['board', 'Aldermoor AM-B46'],
      A2: ['dimm', 'Palewater', eight],
      B2: ['dimm', 'Palewater', eight],
    });
    expect(said(same)).toEqual([
      'board same',
      'memory-slots same',
      'modules same',
      'A1 same',
      'A2 same',
      'B1 same',
      'B2 same',
      'drives not-said',
    ]);
  });

  it('differs slot by slot where a module sits elsewhere than the report says, or another size', () => {
    const moved = counted({
      board: ['board', 'an Aldermoor AM-B46, rev 2'],
      A2: ['dimm', 'Palewater', { capacity: 4 }],
      B1: ['dimm', 'Palewater', eight],
    });
    expect(said(moved)).toEqual([
      'board same',
      'memory-slots same',
      'modules same',
      'A1 same',
      'A2 differs',
      'B1 differs',
      'B2 differs',
      'drives not-said',
    ]);
  });

  it('agrees with how it came where a wrong slot was put right since', () => {
    const { machine, parts } = counted({ A2: ['dimm', 'Palewater', eight], B2: ['dimm', 'Palewater', eight] });
    const moved = { ...machine, belongsIn: { A1: 'A2' as PartId, B2: 'B2' as PartId } };
    expect(said({ machine: moved, parts }).slice(3, 7)).toEqual([
      'A1 as-it-came',
      'A2 as-it-came',
      'B1 same',
      'B2 same',
    ]);
  });

  it('sends a person to look where only names could tell, and takes nothing uncounted as missing', () => {
    const vague = counted({ A2: ['dimm', 'unknown DIMM'], B2: ['dimm', 'Palewater', eight] });
    expect(said(vague)).toEqual([
      'board not-counted',
      'memory-slots same',
      'modules same',
      'A1 same',
      'A2 look',
      'B1 same',
      'B2 same',
      'drives not-said',
    ]);
  });

  it('says nothing before a census, nor without a report', () => {
    const { machine, parts } = counted({});
    expect(againstCensus({ ...machine, slots: [] }, parts)).toEqual([]);
    expect(againstCensus({ ...machine, report: null }, parts)).toEqual([]);
  });

  it('does not hold modules against slots by the order of the records alone', () => {
    const unlabelled = REPORT.replaceAll(/DIMM_(..)/g, 'DIMM');
    const { machine, parts } = counted({ A2: ['dimm', 'Palewater', eight] });
    const rows = againstCensus({ ...machine, report: ownReportOf(saidOf(readMachineReport(unlabelled))) }, parts);
    expect(rows.map(({ about, is }) => `${about} ${is}`)).toEqual([
      'board not-counted',
      'memory-slots same',
      'modules differs',
      'drives not-said',
    ]);
  });
});
