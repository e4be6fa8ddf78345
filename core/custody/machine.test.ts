import { describe, expect, it } from 'vitest';
import { aMachine, MACHINE, OWNER } from '../../tests/builders/custody.ts';
import type { PartId } from '../ids.ts';
import { personal } from '../journal/personal.ts';
import { ownReportOf } from '../readings/ownReportOf.ts';
import { readMachineReport } from '../readings/readMachineReport.ts';
import { saidOf } from '../readings/readText.ts';
import { applyMachine, type Machine, type MachineEntry, slotRecorded } from './machine.ts';

const [one, two] = ['one' as PartId, 'two' as PartId];
type Told = MachineEntry extends infer E ? (E extends MachineEntry ? Pick<E, 'kind' | 'body'> : never) : never;
/** The machine after these entries of its stream, in turn. */
const after = (machine: Machine, ...told: readonly Told[]): Machine =>
  told.reduce(
    (now, entry) => applyMachine(now, { stream: `machine:${MACHINE}`, ...entry } as MachineEntry) ?? now,
    machine,
  );

const filled = (slot: string, part: PartId, belongs: boolean): Told => ({
  kind: 'slot-filled',
  body: { slot, part, belongs },
});
const came = (slot: string, part: PartId): Told => ({ kind: 'part-at-taking-in', body: { slot, part } });

describe('where a part belongs', () => {
  it('is where it came, until it is put right elsewhere: then its old slot is nobody’s', () => {
    const machine = after(aMachine(), came('A1', one), filled('A2', one, true));
    expect(machine.belongsIn).toEqual({ A2: one });
    expect(slotRecorded(machine, one)).toBe('A2');
    expect(machine.atTakingIn).toEqual({ A1: one });
  });

  it('does not change by sitting elsewhere for a trial', () => {
    const machine = after(aMachine(), came('A1', one), filled('A2', one, false), filled('A1', two, false));
    expect(machine.belongsIn).toEqual({ A1: one });
    expect(machine.inside).toEqual({ A2: one, A1: two });
    expect(slotRecorded(machine, two)).toBeNull();
  });

  it('is not lost by taking it out, and it stays known to the machine, once', () => {
    const machine = after(aMachine(), came('A1', one), filled('A1', one, true), {
      kind: 'slot-emptied',
      body: { slot: 'A1', part: one },
    });
    expect(machine.inside).toEqual({});
    expect(machine.belongsIn).toEqual({ A1: one });
    expect(machine.parts).toEqual([one]);
  });
});

describe('leads', () => {
  it('that are plugged in again are just those, and one pulled twice is out once', () => {
    const machine = after(
      aMachine(),
      { kind: 'unplugged', body: { slots: ['SATA 1', 'SATA 2'] } },
      { kind: 'unplugged', body: { slots: ['SATA 2'] } },
      { kind: 'plugged-in', body: { slots: ['SATA 1'] } },
    );
    expect(machine.unplugged).toEqual(['SATA 2']);
  });
});

describe('what the machine says of itself', () => {
  const BOARD = 'Base Board Information\n\tManufacturer: Aldermoor\n\tProduct Name: AM-B46\n';
  const CHASSIS = 'Chassis Information\n\tType: Tower\n';
  const table = (type: number, of: string) => `Handle 0x00${10 + type}, DMI type ${type}, 20 bytes\n${of}\n`;
  const DRIVE = `smartctl 7.3 2022-02-28 r5338 [x86_64-linux-6.1.0] (local build)
=== START OF INFORMATION SECTION ===
Device Model:     Plain Disk 1
=== START OF READ SMART DATA SECTION ===
SMART overall-health self-assessment test result: PASSED
`;
  const serials = personal('readings', OWNER, [{ of: 'drives[0]', serial: 'X1' }]);
  const read = (text: string, more: object = {}): Told => ({
    kind: 'own-report-read',
    body: {
      report: ownReportOf(saidOf(readMachineReport(text))),
      taken: null,
      text: null,
      serials: null,
      digest: '',
      ...more,
    },
  });

  it('in a second report takes the place only of what that one speaks of', () => {
    const whole = after(aMachine(), read(table(2, BOARD) + table(3, CHASSIS)), read(DRIVE));
    expect(whole.report).toMatchObject({
      board: { vendor: 'Aldermoor', name: 'AM-B46' },
      chassis: 'Tower',
      drives: [{ model: 'Plain Disk 1' }],
    });
    const anew = after(whole, read(table(2, BOARD.replace('AM-B46', 'AM-B47'))));
    expect(anew.report).toMatchObject({ board: { name: 'AM-B47' }, drives: [{ model: 'Plain Disk 1' }] });
    expect(anew.report?.kinds).toEqual([...new Set([...(whole.report?.kinds ?? []), ...(anew.report?.kinds ?? [])])]);
  });

  it('leaves as gaps those of the last report alone', () => {
    const [first, second] = [read(table(2, BOARD)), read(DRIVE)];
    const gapsOf = (told: Told) => after(aMachine(), told).report?.gaps;
    expect(gapsOf(first)).not.toEqual(gapsOf(second));
    expect(after(aMachine(), first, second).report?.gaps).toEqual(gapsOf(second));
  });

  it('keeps the drives’ serial numbers until a report names drives again', () => {
    const named = after(aMachine(), read(DRIVE, { serials }));
    expect(after(named, read(table(2, BOARD))).driveSerials).toEqual(serials);
    expect(after(named, read(DRIVE)).driveSerials).toBeNull();
  });
});
