import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import boardSizes from '../../assets/fit/boardSizes.json' with { type: 'json' };
import dimmOrderTable from '../../assets/fit/dimmOrder.json' with { type: 'json' };
import memory from '../../assets/fit/memory.json' with { type: 'json' };
import placementTable from '../../assets/fit/placement.json' with { type: 'json' };
import power from '../../assets/fit/power.json' with { type: 'json' };
import sockets from '../../assets/fit/sockets.json' with { type: 'json' };
import type { Attributes } from '../../core/custody/part.ts';
import { dimmSlotsFromReport, type MemoryRecord } from '../../core/fit/dimmLabels.ts';
import { fits } from '../../core/fit/fits.ts';
import { emptied, type MachineView } from '../../core/fit/machineView.ts';
import { moduleBandwidth, moduleName, parseModuleName, sameSpeed } from '../../core/fit/moduleName.ts';
import { placementOf } from '../../core/fit/placement.ts';
import { connectorRating, plugWatts } from '../../core/fit/rules/power.ts';
import { herMachine, wall } from '../builders/harrowmouth.ts';
import { describeOverOpenData } from '../openData.ts';

describe('module names', () => {
  it.each(memory.names)('$speed is $name ($source)', ({ speed, name }) => {
    const [kind = '', rate = ''] = speed.split('-');
    expect(moduleName({ memory: kind, speed: Number(rate) })).toBe(name);
    expect(parseModuleName(name)).toEqual({ memory: kind, speed: Number(rate) });
    expect(parseModuleName(speed)).toEqual({ memory: kind, speed: Number(rate) });
  });
  it('a bandwidth is eight bytes a transfer; the name is only near it for six of the speeds', () => {
    expect(moduleBandwidth(3200)).toBe(25_600);
    const uneven = memory.names.filter(
      ({ speed, name }) => moduleBandwidth(Number(speed.split('-')[1])) !== Number(name.split('-')[1]),
    );
    expect(uneven.map(({ speed }) => speed.split('-')[1])).toEqual(['1066', '1333', '1866', '2133', '2666', '2933']);
  });
  // JEDEC label form, from memory: from DDR4 on the data rate stands after PC4-/PC5-.
  it.each([
    ['PC4-2400T', 'DDR4', 2400],
    ['PC5-4800B', 'DDR5', 4800],
    ['PC4-2666V-UA2-11', 'DDR4', 2666],
    ['PC3L-12800', 'DDR3L', 1600],
    ['pc3-8500', 'DDR3', 1066],
  ])('the label %s says %s at %i MT/s', (label, kind, speed) => {
    expect(parseModuleName(label)).toEqual({ memory: kind, speed });
  });
  it.each(['PC4-99999', 'PC2-6400', 'PC4', 'DDR4 2666', ''])('refuses to guess at "%s"', (label) => {
    expect(parseModuleName(label)).toBeUndefined();
  });
  it('takes 1066 and 1067, 1333 and 1334, 2666 and 2667 for the same speed, 2400 and 2666 not', () => {
    expect([sameSpeed(1066, 1067), sameSpeed(1333, 1334), sameSpeed(2666, 2667), sameSpeed(2400, 2666)]).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });
});

describe('power by connector', () => {
  // Intel 613768, Table 3-5 (2x3 6.75 A, 2x4 13.5 A, 12VHPWR 55 A RMS); slot 75 W: wiki.hpcmate.com.
  it('is 75 W for a 2x3 plug, 150 W for a 2x4, 600 W for a 12V-2x6', () => {
    expect([plugWatts('6-pin'), plugWatts('8-pin'), plugWatts('12v-2x6')]).toEqual([75, 150, 600]);
  });
  it.each([
    [[], 75],
    [['6-pin'], 150],
    [['8-pin'], 225],
    [['6-pin', '8-pin'], 300],
    [['12v-2x6'], 675],
  ])('with the plugs %j and the slot a card may take %i W and not a watt more', (plugs, watts) => {
    expect(connectorRating({ watts, 'power-plugs': plugs }).says).toBe('yes');
    expect(connectorRating({ watts: watts + 1, 'power-plugs': plugs })).toMatchObject({ says: 'no', place: watts });
  });
  // The amps of a plug carry its watts at the lowest voltage ATX 3.x allows there, 12 V less 8 % (Intel 613768, Table 3-5).
  it('leaves every plug its watts at 11.04 V within one percent', () => {
    for (const { watts, amps } of power.plugs) expect(amps * 11.04).toBeGreaterThan(watts * 0.99);
  });
  // Intel 336521 (ATX 3.0), Table 2-1, 12V2 continuous / peak.
  it.each([
    [165, 37.5, 40],
    [125, 26, 39],
    [65, 23, 34],
    [35, 11, 19],
  ])('asks the processor rail of the %i W class for %d A', (watts, amps, peak) => {
    expect(power.processorRail.find((row) => row.watts === watts)).toMatchObject({ amps, peak });
  });
});

describe('memory kinds', () => {
  const bare = (socket: string, memoryKind?: string): MachineView => {
    const machine = emptied(emptied(emptied(herMachine, 'A2'), 'B1'), 'socket');
    const attributes: Attributes = memoryKind ? { socket, memory: memoryKind } : { socket };
    return {
      ...machine,
      parts: machine.parts.map((held) =>
        held.slot === 'board' ? { ...held, part: { ...held.part, attributes } } : held,
      ),
    };
  };
  const verdict = (kind: string, machine: MachineView) =>
    fits({ ...wall.S01, attributes: { ...wall.S01.attributes, memory: kind } }, 'A2', machine).reasons.find(
      ({ fact }) => fact === 'memory-kind',
    )?.says;

  // Voltages and contacts: telegra.ph/1x-so-dimm-slot-09-27, dharmendrapuri.com/types-of-ram, techterms.com/definition/ddr5.
  it('DDR4 and DDR5 have the same number of contacts and still do not interchange', () => {
    const contacts = (kind: string) => memory.kinds.find((row) => row.memory === kind)?.dimmContacts;
    expect([contacts('DDR3'), contacts('DDR4'), contacts('DDR5')]).toEqual([240, 288, 288]);
    expect(verdict('DDR5', bare('LGA1700', 'DDR4'))).toBe('no');
    expect(verdict('DDR4', bare('LGA1700', 'DDR5'))).toBe('no');
  });
  // rankedcpu.com, CPU sockets and upgrade path.
  it.each([
    ['AM4', 'DDR4', 'yes'],
    ['AM4', 'DDR5', 'no'],
    ['AM5', 'DDR5', 'yes'],
    ['AM5', 'DDR4', 'no'],
    ['LGA1851', 'DDR5', 'yes'],
    ['LGA1700', 'DDR4', 'unknown'],
    ['LGA1700', 'DDR5', 'unknown'],
    ['LGA1700', 'DDR3', 'no'],
    ['LGA1200', 'DDR4', 'unknown'],
    ['LGA1151', 'DDR4', 'unknown'],
    ['LGA1151', 'DDR5', 'unknown'],
  ])('a board of which only socket %s is known: %s %s', (socket, kind, says) => {
    expect(verdict(kind, bare(socket))).toBe(says);
  });
  it('0x12 is DDR to SMBIOS and nothing to SPD: the two tables are kept apart', () => {
    expect(memory.smbiosTypes.find(({ code }) => code === 0x12)?.memory).toBe('DDR');
    expect(memory.spdTypes.find(({ code }) => code === 0x12)).toBeUndefined();
    expect(memory.smbiosTypes.find(({ code }) => code === 0x1a)?.memory).toBe('DDR4');
    expect(memory.spdTypes.find(({ code }) => code === 0x0c)?.memory).toBe('DDR4');
    expect(memory.smbiosTypes.find(({ code }) => code === 0x22)?.memory).toBe('DDR5');
  });
});

describe('sockets', () => {
  // DMTF DSP0134 7.5.5 as in tianocore/edk2 SmBios.h.
  it.each([
    [0x31, 'AM4'],
    [0x32, 'LGA1151'],
    [0x3e, 'LGA1200'],
    [0x40, 'LGA1700'],
    [0x49, 'AM5'],
    [0x55, 'LGA1851'],
  ])('SMBIOS code %i is %s', (code, socket) => {
    expect(sockets.smbios.find((row) => row.code === code)?.socket).toBe(socket);
  });
  // One code for two generations of boards that do not take each other's processors: the socket alone is never a yes.
  it('a processor in its right socket without the board’s list stays unknown (LGA1151 has two generations)', () => {
    const board = { ...herMachine.parts.find(({ slot }) => slot === 'board'), attributes: { socket: 'LGA1151' } };
    const machine = {
      ...herMachine,
      parts: herMachine.parts.map((held) =>
        held.slot === 'board' ? { ...held, part: { ...held.part, attributes: board.attributes } } : held,
      ),
    };
    const processor = { ...wall.S07, attributes: { ...wall.S07.attributes, socket: 'LGA1151' } };
    expect(fits(processor, 'socket', machine).fits).toBe('unknown');
  });
});

describe('board sizes', () => {
  // millertech.com/mb-sbc/indus-mb.htm; E-ATX, FlexATX, Mini-ATX: wiki.studentb.eu, MicroATX.
  it.each([
    ['atx', 305, 244],
    ['microatx', 244, 244],
    ['mini-itx', 170, 170],
    ['e-atx', 305, 330],
    ['flexatx', 229, 191],
    ['mini-atx', 284, 208],
  ])('%s is %i by %i mm', (form, width, depth) => {
    expect(boardSizes.sizes.find((row) => row.form === form)).toMatchObject({ width, depth });
  });
});

describe('slot order', () => {
  it('is offered as common practice, next to four board manuals that disagree', () => {
    expect(dimmOrderTable.manualsDisagree).toHaveLength(4);
    for (const row of dimmOrderTable.defaults) expect(row.source).toMatch(/common practice, no source|every slot/);
  });
});

describe('counted placements (github.com/linuxhw/DMI at 57b21bc6, CC BY 4.0)', () => {
  it('add up to their totals', () => {
    expect(placementTable.byOrder.filled.reduce((sum, row) => sum + row.machines, 0)).toBe(
      placementTable.byOrder.machines,
    );
    for (const row of placementTable.byLabel)
      expect(row['second-of-each'] + row['first-of-each'] + row['one-channel'] + row.mixed).toBe(row.machines);
  });
  it('print as 80.5, 15.3, 3.8 and 0.3 % for DDR4 and DDR5 together', () => {
    const rows = placementTable.byLabel.filter(({ memory: kind }) => kind !== 'DDR3');
    const share = (pattern: 'second-of-each' | 'first-of-each' | 'one-channel' | 'mixed') =>
      (
        (100 * rows.reduce((sum, row) => sum + row[pattern], 0)) /
        rows.reduce((sum, row) => sum + row.machines, 0)
      ).toFixed(1);
    expect([share('second-of-each'), share('first-of-each'), share('one-channel'), share('mixed')]).toEqual([
      '80.5',
      '15.3',
      '3.8',
      '0.3',
    ]);
  });
});

describeOverOpenData('memory slots of open hardware dumps', (data) => {
  const records = (text: string): readonly MemoryRecord[] =>
    text
      .split(/\n\s*\n/)
      .filter((block) => /DMI type 17,/.test(block) && /^\s*Size:/m.test(block) && !/^\s*Type: Flash/m.test(block))
      .map((block) => {
        const field = (name: string) => new RegExp(`^\\s*${name}: *(.*?)\\s*$`, 'm').exec(block)?.[1] || null;
        const bank = field('Bank Locator');
        return {
          locator: field('Locator'),
          bank: bank === 'Not Specified' ? null : bank,
          filled: /^\d/.test(field('Size') ?? ''),
          type: /^DDR\d/.test(field('Type') ?? '') ? field('Type') : null,
        };
      });
  const files = data.files('hardware', /^dmi-.*\.txt$/);
  const of = (number: string) =>
    records(readFileSync(files.find((file) => basename(file) === `dmi-${number}.txt`) ?? '', 'utf8'));

  it.each(files.map((file) => [basename(file), file] as const))(
    '%s gets a plan and a verdict that names its evidence',
    (_, file) => {
      const read = records(readFileSync(file, 'utf8'));
      const { slots, gaps } = dimmSlotsFromReport(read);
      expect(slots).toHaveLength(read.length);
      expect(new Set(slots.map(({ id }) => id)).size).toBe(slots.length);
      expect(slots.map(({ order }) => order).toSorted((a, b) => a - b)).toEqual(slots.map((_slot, index) => index + 1));
      const placement = placementOf(read);
      expect(['labels', 'order', 'none']).toContain(placement.evidence);
      expect(gaps.length === 0).toBe(
        placement.evidence === 'labels' ||
          (placement.evidence === 'none' && slots.every(({ channel }) => channel !== undefined) && read.length > 0),
      );
      if (placement.says === 'one-channel') {
        const channels = slots.filter((_slot, index) => read[index]?.filled).map(({ channel }) => channel);
        expect(new Set(channels).size).toBe(1);
        expect(new Set(slots.map(({ channel }) => channel)).size).toBeGreaterThan(1);
      }
    },
  );
  // Read by eye in the dumps.
  it.each([
    ['001', { evidence: 'labels', says: 'look-in-manual', pattern: 'second-of-each' }],
    ['008', { evidence: 'labels', says: 'look-in-manual', pattern: 'first-of-each' }],
    ['012', { evidence: 'labels', says: 'look-in-manual', pattern: 'second-of-each' }],
    ['027', { evidence: 'labels', says: 'one-channel' }],
    ['035', { evidence: 'labels', says: 'one-channel' }],
    ['040', { evidence: 'labels', says: 'one-channel' }],
    ['041', { evidence: 'labels', says: 'look-in-manual', pattern: 'mixed' }],
    ['037', { evidence: 'labels', says: 'look-in-manual', pattern: 'second-of-each' }],
    ['039', { evidence: 'labels', says: 'all-channels-used' }],
    ['004', { evidence: 'labels', says: 'all-channels-used' }],
    ['018', { evidence: 'labels', says: 'every-slot' }],
    ['025', { evidence: 'order', says: 'proves-nothing' }],
    ['036', { evidence: 'order', says: 'proves-nothing' }],
    ['033', { evidence: 'order', says: 'proves-nothing' }],
    ['023', { evidence: 'none', says: 'no-slots-listed' }],
    ['042', { evidence: 'none', says: 'no-module-listed' }],
  ])('dmi-%s: %o', (number, verdict) => {
    expect(placementOf(of(number))).toMatchObject(verdict);
  });
});
