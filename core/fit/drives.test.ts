import { describe, expect, it } from 'vitest';
import { herMachine, hers, wall } from '../../tests/builders/harrowmouth.ts';
import type { Attributes, PartFacts } from '../custody/part.ts';
import { cardSlotPlan } from '../readings/cardSlotPlan.ts';
import { fits } from './fits.ts';
import type { MachineView } from './machineView.ts';

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

describe('a drive', () => {
  it('a SATA module in an M.2 slot for NVMe does not fit; without the slot’s bus it is unknown', () => {
    const stick = having(wall.S12, { size: 'M.2', length: 80 });
    expect(fact(stick, 'M2_1', herMachine, 'drive-bus')?.says).toBe('no');
    const plain: MachineView = {
      ...herMachine,
      slots: {
        ...herMachine.slots,
        slots: herMachine.slots.slots.map((slot) => (slot.id === 'M2_1' ? { ...slot, attributes: {} } : slot)),
      },
    };
    expect(fits(stick, 'M2_1', plain).fits).toBe('unknown');
    expect(fits(wall.S12, 'M2_1', herMachine).fits).toBe('no');
  });
  it('a SATA drive goes on a plug that is called so, though nobody wrote down its bus', () => {
    const named: MachineView = {
      ...herMachine,
      slots: {
        ...herMachine.slots,
        slots: [{ id: 'SATA 9', takes: 'drive', order: 9, source: 'by-hand' }],
      },
    };
    expect(fact(wall.S12, 'SATA 9', named, 'drive-bus')?.says).toBe('yes');
  });
  it('a slot that the machine’s own report tells to be M.2 takes M.2 modules alone, whatever it is called there', () => {
    const said = [{ designation: 'SSD upper', type: 'M.2 Socket 3', usage: 'available' }] as const;
    const told: MachineView = {
      ...herMachine,
      slots: { ...herMachine.slots, slots: cardSlotPlan(said, new Set()).map(({ slot }) => slot) },
    };
    expect(fact(hers.m2.part, 'SSD upper', told, 'drive-shape')?.says).toBe('yes');
    expect(fact(wall.S12, 'SSD upper', told, 'drive-shape')?.says).toBe('no');
  });
  it('a drive in an M.2 slot asks for no SATA lead, and is not counted among those that do', () => {
    const stick = having(wall.S12, { size: 'M.2', length: 80 });
    const oneLead = change(herMachine, 'supply', (part) => having(part, { 'lead-sata': 1 }));
    const beside = {
      ...oneLead,
      parts: [
        ...oneLead.parts.filter(({ part }) => part.kind !== 'drive' && part.kind !== 'optical-drive'),
        { slot: 'M2_1', part: stick },
      ],
    };
    expect(fact(stick, 'M2_2', beside, 'sata-leads')).toBeUndefined();
    expect(fact(wall.S12, 'SATA 1', beside, 'sata-leads')).toMatchObject({ says: 'yes', part: 1 });
    expect(
      fact(
        wall.S12,
        'SATA 2',
        { ...beside, parts: [...beside.parts, { slot: 'SATA 1', part: wall.S12 }] },
        'sata-leads',
      ),
    ).toMatchObject({ says: 'no', part: 2 });
  });
  it('an M.2 module longer than the board takes does not fit', () => {
    expect(fact(having(hers.m2.part, { length: 110 }), 'M2_1', herMachine, 'm2-length')?.says).toBe('no');
  });
});
