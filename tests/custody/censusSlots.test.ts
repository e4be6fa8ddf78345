import { describe, expect, it } from 'vitest';
import { writeCensus } from '../../core/commands/intake/writeCensus.ts';
import type { Slot, SlotPlan } from '../../core/custody/slot.ts';
import { type SlotEdits, slotPlanByHand } from '../../core/fit/slotPlan.ts';
import type { JobId } from '../../core/ids.ts';
import type { PureShop } from './pureShop.ts';
import { aShopWithTwoMachines } from './twoMachines.ts';

const job = 'j1' as JobId;
const bare = ({ id, takes, order, source }: Slot) => ({ id, takes, order, source });

/** The machine's slots as somebody who looked puts them right, written as its census. */
function census(shop: PureShop, edits: SlotEdits) {
  const plan: SlotPlan = { slots: shop.machines.get('m1')?.slots ?? [], gaps: [] };
  const edited = slotPlanByHand(plan, edits);
  if ('refused' in edited) throw new Error(edited.refused);
  return shop.ask(writeCensus, { job, slots: edited.slots.map(bare), parts: [], gaps: [] });
}
const slotsOf = (shop: PureShop) => shop.machines.get('m1')?.slots.map(({ id }) => id);

describe('slots put right by whoever looks', () => {
  it('a slot that nobody knew of is there, marked as seen by hand, and can be called as it is printed', () => {
    const { real } = aShopWithTwoMachines();
    expect(census(real, { add: [{ id: 'M2_1', takes: 'drive' }] }).ok).toBe(true);
    expect(real.machines.get('m1')?.slots.at(-1)).toMatchObject({ id: 'M2_1', takes: 'drive', source: 'by-hand' });
    expect(census(real, { rename: { M2_1: 'M.2 upper' } }).ok).toBe(true);
    expect(slotsOf(real)).toContain('M.2 upper');
    expect(slotsOf(real)).not.toContain('M2_1');
  });

  it.each([
    ['called otherwise', { rename: { A1: 'DIMM 1' } }],
    ['struck off', { drop: ['A1'] }],
  ])('one in which something sits is not %s: the part would be in no slot; nothing is changed', (_, edits) => {
    const { real } = aShopWithTwoMachines();
    const [before, entries] = [slotsOf(real), real.journal.length];
    expect(census(real, edits)).toMatchObject({ refusal: { refused: 'slot-still-filled', slot: 'A1' } });
    expect(slotsOf(real)).toEqual(before);
    expect(real.journal.length).toBe(entries);
  });
});
