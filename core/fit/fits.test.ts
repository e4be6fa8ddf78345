import { describe, expect, it } from 'vitest';
import { herMachine, hers, wall } from '../../tests/builders/harrowmouth.ts';
import type { Attributes, PartFacts } from '../custody/part.ts';
import { fits } from './fits.ts';
import { emptied, type MachineView } from './machineView.ts';

const without = (part: PartFacts, ...gone: readonly string[]): PartFacts => ({
  ...part,
  attributes: Object.fromEntries(Object.entries(part.attributes).filter(([name]) => !gone.includes(name))),
});
const having = (part: PartFacts, attributes: Attributes): PartFacts => ({
  ...part,
  attributes: { ...part.attributes, ...attributes },
});
const change = (machine: MachineView, slot: string, by: (part: PartFacts) => PartFacts): MachineView => ({
  ...machine,
  parts: machine.parts.map((held) => (held.slot === slot ? { ...held, part: by(held.part) } : held)),
});
const fact = (part: PartFacts, slot: string, machine: MachineView, name: string) =>
  fits(part, slot, machine).reasons.find((reason) => reason.fact === name);

describe('what the demo shop does in her machine', () => {
  it.each([
    ['our module in A2', wall.S01, 'A2'],
    ['our processor in her socket', wall.S07, 'socket'],
    ['our card that needs no plug', wall.S03, 'x16'],
    ['our bigger card on her supply', wall.S04, 'x16'],
    ['our supply with its own leads', wall.S05, 'supply'],
    ['our old supply', wall.S06, 'supply'],
    ['our cooler', wall.S11, 'cooler'],
    ['our test drive', wall.S12, 'SATA 1'],
    ['our fan', wall.S13, 'fan 1'],
    ['the board that is sold to her', wall.S10, 'board'],
  ] as const)('%s fits', (_, part, slot) => {
    const { fits: says, reasons } = fits(part, slot, herMachine);
    expect(reasons.filter((reason) => reason.says !== 'yes')).toEqual([]);
    expect(says).toBe('yes');
  });
  it('our other processor does not: another socket, and both are named', () => {
    expect(fits(wall.S08, 'socket', herMachine).fits).toBe('no');
    expect(fact(wall.S08, 'socket', herMachine, 'socket')).toMatchObject({ says: 'no', part: 'AM4', place: 'LGA1200' });
  });
  it('every part of hers fits where it sits, the module in the wrong slot apart', () => {
    for (const { part, slot } of Object.values(hers)) {
      expect([slot, fits(part, slot, herMachine).fits]).toEqual([slot, slot === 'B1' ? 'unknown' : 'yes']);
    }
    expect(fact(hers.module2.part, 'B1', herMachine, 'slot-order')).toMatchObject({
      says: 'unknown',
      part: 'B1',
      place: ['A2', 'B2'],
    });
    expect(fits(hers.module2.part, 'B2', emptied(herMachine, 'B1')).fits).toBe('yes');
  });
});

describe('a place that cannot take the part', () => {
  it('refuses a DIMM in a card slot', () => {
    expect(fits(wall.S01, 'x16', herMachine)).toMatchObject({
      fits: 'no',
      reasons: [{ fact: 'slot-takes', part: 'dimm', place: 'card' }],
    });
  });
  it('does not know a slot that is not in the plan', () => {
    expect(fits(wall.S01, 'C1', herMachine).fits).toBe('unknown');
  });
  it('refuses a slot that is soldered itself, whatever nobody wrote of the part in it', () => {
    const soldered: MachineView = {
      ...herMachine,
      slots: {
        ...herMachine.slots,
        slots: herMachine.slots.slots.map((slot) =>
          slot.id === 'A2' ? { ...slot, attributes: { soldered: true } } : slot,
        ),
      },
    };
    expect(fact(wall.S01, 'A2', soldered, 'soldered')?.says).toBe('no');
    expect(fact(wall.S01, 'A1', soldered, 'soldered')).toBeUndefined();
  });
  it('refuses what is soldered down', () => {
    const soldered = change(herMachine, 'A2', (part) => having(part, { soldered: true }));
    expect(fits(wall.S01, 'A2', soldered)).toMatchObject({ fits: 'no', reasons: [{ fact: 'soldered' }] });
  });
});

describe('memory', () => {
  const ddr5 = having(wall.S01, { memory: 'DDR5' });
  it('of another generation does not fit', () => {
    expect(fact(ddr5, 'A2', herMachine, 'memory-kind')).toMatchObject({ says: 'no', part: 'DDR5', place: ['DDR4'] });
  });
  it('that is registered does not fit a board for unbuffered modules', () => {
    expect(fact(having(wall.S01, { module: 'RDIMM' }), 'A2', herMachine, 'registered')).toMatchObject({
      says: 'no',
      part: 'registered',
    });
  });
  it('of the notebook kind does not fit', () => {
    expect(fits(having(wall.S01, { module: 'SO-UDIMM' }), 'A2', herMachine).fits).toBe('no');
  });
  it('of which only "DIMM" is known leaves open whether it is registered', () => {
    expect(fact(having(wall.S01, { module: 'DIMM' }), 'A2', herMachine, 'registered')).toMatchObject({
      says: 'unknown',
      look: [{ at: 'part', attribute: 'module' }],
    });
  });
  it('runs at the slowest of module, board and processor, and that refuses nothing', () => {
    expect(fact(wall.S02, 'A2', herMachine, 'memory-speed')).toMatchObject({
      says: 'yes',
      figures: { 'runs-at': 2666 },
    });
    expect(fact(wall.S02, 'A2', emptied(herMachine, 'B1'), 'memory-speed')).toMatchObject({
      figures: { 'runs-at': 2933 },
    });
  });
  it('in a set needs as many slots as it has modules', () => {
    expect(fact(having(wall.S02, { modules: 8 }), 'A2', herMachine, 'set-size')?.says).toBe('no');
  });
  it('beyond what the board takes does not fit', () => {
    expect(fact(having(wall.S01, { capacity: 256 }), 'A2', herMachine, 'most-memory')).toMatchObject({
      says: 'no',
      part: 264,
      place: 128,
    });
  });
  it('on a board of which nothing is known: the modules inside tell, a socket that takes both does not', () => {
    const bare = change(herMachine, 'board', (board) => ({ ...board, attributes: {} }));
    expect(fact(wall.S01, 'A2', bare, 'memory-kind')).toMatchObject({ says: 'yes', source: 'modules-inside' });
    expect(fact(ddr5, 'A2', bare, 'memory-kind')?.says).toBe('unknown');
    const empty = emptied(emptied(bare, 'A2'), 'B1');
    const both = change(
      change(empty, 'board', (board) => having(board, { socket: 'LGA1700' })),
      'socket',
      (part) => without(part, 'socket'),
    );
    expect(fact(wall.S01, 'A2', both, 'memory-kind')).toMatchObject({
      says: 'unknown',
      look: [{ at: 'board', attribute: 'memory' }],
    });
    expect(fact(having(wall.S01, { memory: 'DDR3' }), 'A2', both, 'memory-kind')?.says).toBe('no');
  });
  it('does not lean on a socket row that nobody has read', () => {
    const bare = emptied(
      emptied(
        change(herMachine, 'board', (board) => ({ ...board, attributes: { socket: 'LGA1151' } })),
        'A2',
      ),
      'B1',
    );
    expect(fact(ddr5, 'A2', bare, 'memory-kind')?.says).toBe('unknown');
  });
  it('of the low-voltage kind is neither taken nor refused by its generation alone', () => {
    const ddr3 = change(herMachine, 'board', (board) => having(board, { memory: 'DDR3' }));
    expect(fact(having(wall.S01, { memory: 'DDR3L' }), 'A2', ddr3, 'memory-kind')?.says).toBe('unknown');
  });
  it('in a slot the manual does not ask for stays unknown; a default alone decides nothing', () => {
    const onlyOne = emptied(emptied(herMachine, 'A2'), 'B1');
    expect(fact(wall.S01, 'A1', onlyOne, 'slot-order')).toMatchObject({
      says: 'unknown',
      place: ['A2'],
      source: 'board-manual',
    });
    const { dimmOrder: _, ...noManual } = onlyOne;
    expect(fact(wall.S01, 'A1', noManual, 'slot-order')).toBeUndefined();
  });
});

describe('a processor', () => {
  it('with the right socket and nobody to ask stays unknown, and says to look at the board list', () => {
    const noList = change(herMachine, 'board', (board) => without(board, 'processor-list'));
    expect(fits(wall.S07, 'socket', noList).fits).toBe('unknown');
    expect(fact(wall.S07, 'socket', noList, 'processor-list')?.look).toEqual([
      { at: 'board', attribute: 'processor-list' },
    ]);
  });
  it('of another socket is refused by that alone: no list is asked', () => {
    expect(fits(wall.S08, 'socket', herMachine).reasons.map((reason) => reason.fact)).not.toContain('processor-list');
  });
  it('off the board list does not fit, whatever its socket', () => {
    expect(fact({ ...wall.S07, name: 'Corvane K8' }, 'socket', herMachine, 'processor-list')?.says).toBe('no');
  });
  it.each([
    ['1407', 'yes'],
    ['1203', 'yes'],
    ['1102', 'no'],
    ['F10b', 'unknown'],
    [undefined, 'unknown'],
  ] as const)('listed from firmware 1203 on, with firmware %s: %s', (firmware, says) => {
    const machine = change(herMachine, 'board', (board) =>
      firmware ? having(board, { firmware }) : without(board, 'firmware'),
    );
    expect(fact(hers.processor.part, 'socket', machine, 'firmware')?.says).toBe(says);
  });
  it('without graphics needs a card in the machine', () => {
    const blind = having(wall.S07, { 'picture-output': false });
    expect(fits(blind, 'socket', herMachine).fits).toBe('yes');
    expect(fact(blind, 'socket', emptied(herMachine, 'x16'), 'picture-output')?.says).toBe('no');
    expect(
      fact(without(wall.S07, 'picture-output'), 'socket', emptied(herMachine, 'x16'), 'picture-output')?.says,
    ).toBe('unknown');
  });
  it('that takes more than its cooler carries does not fit under it', () => {
    expect(fact(having(wall.S07, { watts: 170 }), 'socket', herMachine, 'cooler-watts')).toMatchObject({
      says: 'no',
      part: 170,
      place: 150,
    });
  });
});

describe('a card', () => {
  it('does not fit a case that is too short for it, and stays unknown without the case’s figure', () => {
    expect(fact(having(wall.S04, { length: 360 }), 'x16', herMachine, 'card-length')?.says).toBe('no');
    expect(
      fact(
        wall.S04,
        'x16',
        change(herMachine, 'case', (part) => without(part, 'card-clearance')),
        'card-length',
      )?.says,
    ).toBe('unknown');
  });
  it('with more plugs than the supply has leads of its own does not fit', () => {
    const three = having(wall.S04, { 'power-plugs': ['8-pin', '8-pin', '8-pin'] });
    expect(fact(three, 'x16', herMachine, 'card-leads')).toMatchObject({ says: 'no', part: 3, place: 2 });
  });
  it('may feed a 6-pin plug from a 6+2 lead that is left over, not an 8-pin plug from a 6-pin lead', () => {
    const mixed = having(wall.S04, { 'power-plugs': ['8-pin', '6-pin'] });
    expect(fits(mixed, 'x16', herMachine).fits).toBe('yes');
    const both = fits(having(wall.S04, { 'power-plugs': ['8-pin', '6-pin', '6-pin'] }), 'x16', herMachine);
    expect(both.reasons.filter(({ fact: name }) => name === 'card-leads').map(({ says }) => says)).toEqual([
      'yes',
      'no',
    ]);
    const sixes = change(herMachine, 'supply', (part) => having(part, { 'lead-card-8': 0, 'lead-card-6': 2 }));
    expect(fact(wall.S04, 'x16', sixes, 'card-leads')?.says).toBe('no');
  });
  it('with a plug and a supply whose leads nobody counted stays unknown', () => {
    const uncounted = change(herMachine, 'supply', (part) => without(part, 'lead-card-8'));
    expect(fits(wall.S04, 'x16', uncounted).fits).toBe('unknown');
    expect(fits(wall.S03, 'x16', uncounted).fits).toBe('yes');
  });
  it('that takes more than the supply has left does not fit', () => {
    expect(
      fact(
        having(wall.S04, { watts: 225 }),
        'x16',
        change(herMachine, 'supply', (part) => having(part, { watts: 350 })),
        'supply-watts',
      ),
    ).toMatchObject({ says: 'no', part: 365, place: 350 });
  });
  it('on a 12V-2x6 lead needs a lead that grants its watts', () => {
    const big = having(wall.S04, { watts: 450, 'power-plugs': ['12v-2x6'] });
    const strong = change(herMachine, 'supply', (part) => having(part, { watts: 850, 'lead-card-12v-2x6': 1 }));
    expect(fact(big, 'x16', strong, 'lead-grants')?.says).toBe('unknown');
    const grants = (watts: number) =>
      change(strong, 'supply', (part) => having(part, { 'lead-card-12v-2x6-watts': watts }));
    expect(fits(big, 'x16', grants(450)).fits).toBe('yes');
    expect(fits(big, 'x16', grants(300)).fits).toBe('no');
  });
  it('with a longer edge than the slot does not go in, unless the slot is open at its end', () => {
    const narrow = (open: boolean): MachineView => ({
      ...herMachine,
      slots: {
        ...herMachine.slots,
        slots: herMachine.slots.slots.map((slot) =>
          slot.id === 'x1_1' ? { ...slot, attributes: { length: 1, 'open-ended': open } } : slot,
        ),
      },
    });
    expect(fact(wall.S03, 'x1_1', narrow(false), 'card-edge')?.says).toBe('no');
    expect(fact(wall.S03, 'x1_1', narrow(true), 'card-edge')?.says).toBe('yes');
  });
});

describe('a supply', () => {
  it('beside a maker’s own plug does not fit', () => {
    const own = change(herMachine, 'board', (board) => having(board, { 'atx-plug': 'maker-own: Fernhill' }));
    expect(fact(wall.S05, 'supply', own, 'main-plug')).toMatchObject({
      says: 'no',
      part: '24-pin',
      place: 'maker-own: Fernhill',
    });
  });
  it('with the same maker’s own plug on both sides stays unknown: what looks alike may be wired otherwise', () => {
    const own = { 'atx-plug': 'maker-own' };
    const machine = change(herMachine, 'board', (part) => having(part, own));
    expect(fact(having(hers.supply.part, own), 'supply', machine, 'main-plug')?.says).toBe('unknown');
  });
  it('that what is known inside already asks too much of does not fit, though some of it is not known', () => {
    const unknown = change(herMachine, 'socket', (part) => without(part, 'watts'));
    expect(fact(having(hers.supply.part, { watts: 60 }), 'supply', unknown, 'supply-watts')?.says).toBe('no');
    expect(fact(hers.supply.part, 'supply', unknown, 'supply-watts')?.says).toBe('unknown');
  });
  it('is asked for no SATA leads where no drive hangs on one', () => {
    const none = {
      ...herMachine,
      parts: herMachine.parts.filter(({ part }) => part.kind !== 'drive' && part.kind !== 'optical-drive'),
    };
    expect(fact(hers.supply.part, 'supply', none, 'sata-leads')).toBeUndefined();
    expect(fact(hers.supply.part, 'supply', herMachine, 'sata-leads')).toBeDefined();
  });
  it('with another standard’s plug does not fit', () => {
    expect(fact(having(wall.S05, { 'atx-plug': '10-pin' }), 'supply', herMachine, 'main-plug')?.says).toBe('no');
  });
  it('too weak for what is inside does not fit; of unknown watts it is unknown', () => {
    expect(fact(having(wall.S06, { watts: 250 }), 'supply', herMachine, 'supply-watts')).toMatchObject({
      says: 'no',
      part: 260,
      place: 250,
    });
    expect(fits(without(wall.S06, 'watts'), 'supply', herMachine).fits).toBe('unknown');
  });
  it('that states its processor rail is held against the class of the processor', () => {
    expect(fact(having(wall.S06, { 'amps-12v2': 11 }), 'supply', herMachine, 'processor-rail')).toMatchObject({
      says: 'no',
      part: 23,
      place: 11,
      figures: { class: 65 },
    });
    expect(fact(having(wall.S06, { 'amps-12v2': 23 }), 'supply', herMachine, 'processor-rail')?.says).toBe('yes');
  });
  it('lead of another supply stays unknown, however alike it looks', () => {
    const lead = (of: string | null): PartFacts => ({
      ...wall.S05,
      kind: 'lead',
      attributes: of === null ? {} : { 'leads-of': of },
    });
    const machine: MachineView = {
      ...herMachine,
      slots: {
        ...herMachine.slots,
        slots: [...herMachine.slots.slots, { id: 'card lead', takes: 'lead', order: 1, source: 'by-hand' }],
      },
    };
    expect(fits(lead('Marrable 550'), 'card lead', machine).fits).toBe('yes');
    expect(fits(lead('Marrable 650'), 'card lead', machine).fits).toBe('unknown');
    expect(fits(lead(null), 'card lead', machine).fits).toBe('unknown');
  });
});

describe('cooler, board', () => {
  it('a cooler too tall for the case does not fit', () => {
    expect(fact(having(wall.S11, { height: 170 }), 'cooler', herMachine, 'cooler-height')?.says).toBe('no');
  });
  it('a cooler without a mount for the socket does not fit', () => {
    expect(fact(having(wall.S11, { sockets: ['AM4'] }), 'cooler', herMachine, 'cooler-mount')?.says).toBe('no');
  });
  it('a smaller board fits a case that takes the bigger one, because its holes are among them', () => {
    const onlyAtx = change(herMachine, 'case', (part) => having(part, { 'takes-boards': ['atx'] }));
    expect(fact(wall.S10, 'board', onlyAtx, 'board-size')).toMatchObject({ says: 'yes' });
    expect(fact(wall.S10, 'board', onlyAtx, 'board-size')?.source).toMatch(/subset/);
    expect(fact(having(wall.S10, { 'form-factor': 'e-atx' }), 'board', onlyAtx, 'board-size')?.says).toBe('no');
  });
  it('a board with fewer DIMM slots than she has modules does not fit', () => {
    expect(fact(having(wall.S10, { 'dimm-slots': 1 }), 'board', herMachine, 'dimm-slots')).toMatchObject({
      says: 'no',
      part: 2,
      place: 1,
    });
  });
});
