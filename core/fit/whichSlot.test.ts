import { describe, expect, it } from 'vitest';
import { herMachine, wall } from '../../tests/builders/harrowmouth.ts';
import type { MachineView } from './machineView.ts';
import { fitsBySlot, fitsSomewhere } from './whichSlot.ts';

/** Her machine with facts of one slot changed. */
const withSlot = (id: string, attributes: NonNullable<MachineView['slots']['slots'][number]['attributes']>) => ({
  ...herMachine,
  slots: {
    ...herMachine.slots,
    slots: herMachine.slots.slots.map((slot) => (slot.id === id ? { ...slot, attributes } : slot)),
  },
});

describe('which of the slots of its kind a part would go into', () => {
  it('a loaner fits the machine when the first slot does not take it and a later one does', () => {
    const [first] = herMachine.slots.slots.filter((slot) => slot.takes === 'dimm');
    const machine = withSlot(first?.id ?? '', { memory: 'DDR5' });
    expect(fitsBySlot(wall.S01, machine).map(({ fit }) => fit.fits)).toEqual(['yes', 'yes', 'unknown', 'no']);
    expect(fitsBySlot(wall.S01, machine).at(-1)?.slot).toBe(first?.id);
    expect(fitsSomewhere(wall.S01, machine)).toBe('yes');
  });

  it('does not fit when no slot takes it', () => {
    expect(fitsSomewhere(wall.S08, herMachine)).toBe('no');
  });

  it('is not known while no slot for it is known, and never turned into a yes', () => {
    const unseen = { ...herMachine, slots: { slots: [], gaps: ['dimm-slots'] } };
    expect(fitsSomewhere(wall.S01, unseen)).toBe('unknown');
    const nameless = { ...wall.S01, attributes: {} };
    expect(fitsBySlot(nameless, herMachine).map(({ fit }) => fit.fits)).not.toContain('yes');
    expect(fitsSomewhere(nameless, herMachine)).toBe('unknown');
  });
});
