import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AM_B46, herMachine, WF_M2 } from '../../tests/builders/harrowmouth.ts';
import type { SlotPlan } from '../custody/slot.ts';
import { dimmOrder } from './dimmOrder.ts';
import { slotPlanByHand, slotPlanForBoard } from './slotPlan.ts';

const ids = (plan: SlotPlan, takes: string) => plan.slots.filter((slot) => slot.takes === takes).map((slot) => slot.id);
const asPlan = (plan: SlotPlan | { refused: string }): SlotPlan => {
  if ('refused' in plan) throw new Error(plan.refused);
  return plan;
};

describe('a slot plan by the board’s size', () => {
  it('of her board has what her board has, and no gap', () => {
    const plan = slotPlanForBoard(AM_B46);
    expect(ids(plan, 'dimm')).toEqual(['A1', 'A2', 'B1', 'B2']);
    expect(ids(plan, 'card')).toEqual(['x16']);
    expect(ids(plan, 'add-in')).toEqual(['x4_1', 'x1_1', 'x1_2']);
    expect(ids(plan, 'drive')).toEqual(['M2_1', 'M2_2', 'SATA 1', 'SATA 2', 'SATA 3', 'SATA 4', 'SATA 5', 'SATA 6']);
    expect(plan.gaps).toEqual([]);
  });
  it('of the smaller board has one DIMM slot in each channel', () => {
    expect(ids(slotPlanForBoard(WF_M2), 'dimm')).toEqual(['A1', 'B1']);
  });
  it('of a board known by its size alone is a start, with every count named as a gap', () => {
    const plan = slotPlanForBoard({ 'form-factor': 'mini-itx' });
    expect(ids(plan, 'dimm')).toEqual(['A1', 'B1']);
    expect(plan.gaps).toContain('dimm-slots');
    expect(plan.gaps).toContain('sata-ports');
    expect(plan.gaps).not.toContain('form-factor');
  });
  it('leaves open how many channels there are only where there is more than one DIMM slot and nobody said', () => {
    const gaps = (board: Parameters<typeof slotPlanForBoard>[0]) => slotPlanForBoard(board).gaps;
    expect(gaps({ 'form-factor': 'atx', 'dimm-slots': 4 })).toContain('memory-channels');
    expect(gaps({ 'form-factor': 'atx', 'dimm-slots': 2 })).toContain('memory-channels');
    expect(gaps({ 'form-factor': 'atx', 'dimm-slots': 1 })).not.toContain('memory-channels');
    expect(gaps({ 'form-factor': 'atx', 'dimm-slots': 4, 'memory-channels': 2 })).not.toContain('memory-channels');
  });
  it('of an unknown board has what every machine has, and invents no slot', () => {
    const plan = slotPlanForBoard({});
    expect(ids(plan, 'dimm')).toEqual([]);
    expect(ids(plan, 'processor')).toEqual(['socket']);
    expect(plan.gaps).toContain('form-factor');
  });
  it('gives no slot the same name twice, whatever the counts', () => {
    const counts = fc.record(
      Object.fromEntries(
        ['dimm-slots', 'memory-channels', 'x16-slots', 'further-x16-slots', 'm2-slots', 'sata-ports'].map((name) => [
          name,
          fc.integer({ min: 1, max: 16 }),
        ]),
      ),
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(counts, (known) => {
        const plan = slotPlanForBoard({ 'form-factor': 'atx', ...known } as never);
        expect(new Set(plan.slots.map(({ id }) => id)).size).toBe(plan.slots.length);
      }),
    );
  });
});

describe('a slot plan put right by hand', () => {
  const plan = slotPlanForBoard({ 'form-factor': 'microatx' });
  it('marks only what was touched, and closes the gap that was looked at', () => {
    const after = asPlan(
      slotPlanByHand(plan, {
        rename: { x1_1: 'PCIE2' },
        drop: ['SATA 4'],
        add: [{ id: 'M2_2', takes: 'drive' }],
        looked: ['m2-slots'],
      }),
    );
    expect(after.slots.find(({ id }) => id === 'PCIE2')?.source).toBe('by-hand');
    expect(after.slots.find(({ id }) => id === 'SATA 1')?.source).toBe('template');
    expect(ids(after, 'drive')).toEqual(['M2_1', 'SATA 1', 'SATA 2', 'SATA 3', 'M2_2']);
    expect(after.gaps).not.toContain('m2-slots');
  });
  it.each([
    ['a name used twice', { rename: { A1: 'A2' } }, 'slot-named-twice'],
    ['a slot that is not there', { drop: ['A9'] }, 'slot-not-there'],
    ['a slot without a name', { add: [{ id: ' ', takes: 'fan' as const }] }, 'slot-has-no-name'],
  ])('refuses %s', (_, edits, refused) => {
    expect(slotPlanByHand(plan, edits)).toMatchObject({ refused });
  });
});

describe('which DIMM slots to fill', () => {
  it('is the manual’s to say; without it a default is offered as one', () => {
    expect(dimmOrder(herMachine, 2)).toEqual({ fill: ['A2', 'B2'], evidence: 'board-manual', source: 'board-manual' });
    const { dimmOrder: _, ...unread } = herMachine;
    expect(dimmOrder(unread, 2)).toMatchObject({ fill: ['A2', 'B2'], evidence: 'default' });
    expect(dimmOrder(unread, 1)?.fill).toEqual(['A2']);
    expect(dimmOrder(unread, 4)?.fill).toEqual(['A1', 'A2', 'B1', 'B2']);
  });
  it('is left open for three modules and for slots that are not named by channel', () => {
    const { dimmOrder: _, ...unread } = herMachine;
    expect(dimmOrder(unread, 3)).toBeUndefined();
    const unnamed = {
      slots: {
        ...unread.slots,
        slots: unread.slots.slots.map((slot, index) =>
          slot.takes === 'dimm' ? { ...slot, id: `DIMM ${index}` } : slot,
        ),
      },
    };
    expect(dimmOrder(unnamed, 2)).toBeUndefined();
  });
});
