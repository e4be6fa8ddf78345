import { describe, expect, it } from 'vitest';
import { slotPlanByHand, slotPlanForBoard } from '../fit/slotPlan.ts';
import { readMachineReport } from '../readings/readMachineReport.ts';
import { saidOf } from '../readings/readText.ts';
import { cardSlotsOf, slotsAndPartsFrom } from '../readings/slotsAndParts.ts';
import { hasNoLead, isM2Module, isM2Slot } from './m2.ts';
import { type Slot, slotLength } from './slot.ts';

/** A machine's own report with one M.2 slot for a drive, printed without saying so, one for a radio, and a long slot. */
const REPORT = [
  ['SSD upper', 'M.2 Socket 3'],
  ['radio', 'M.2 Socket 1-DP'],
  ['upper card', 'x16 PCI Express 3 x16'],
]
  .map(
    ([name, type], at) =>
      `Handle 0x003${at}, DMI type 9, 17 bytes\nSystem Slot Information\n\tDesignation: ${name}\n\tType: ${type}\n\tCurrent Usage: In Use\n\n`,
  )
  .join('');

const told = slotsAndPartsFrom(saidOf(readMachineReport(REPORT)), cardSlotsOf(REPORT)).slots;
const usual = slotPlanForBoard({ 'form-factor': 'atx' });
/** The usual board's slots, one called as it is printed on this board. */
const looked = slotPlanByHand(usual, { rename: { M2_1: 'PCIE SSD' } });
const named = (slots: readonly Slot[], id: string): Slot => {
  const slot = slots.find((one) => one.id === id);
  if (!slot) throw new Error(`no slot ${id}`);
  return slot;
};

describe('a drive plugged straight into the board is told by what is kept of its slot', () => {
  it('as the machine’s own report has it, whatever is printed beside it', () => {
    expect(hasNoLead(named(told, 'SSD upper'))).toBe(true);
  });
  it('as the usual board has it: its M.2 slots without a lead, its SATA ports with one', () => {
    const without = usual.slots.filter(hasNoLead).map(({ id }) => id);
    expect(without).toEqual(['M2_1', 'M2_2']);
  });
  it('as it stays when somebody calls the slot by its print', () => {
    if ('refused' in looked) throw new Error(looked.refused);
    expect(hasNoLead(named(looked.slots, 'PCIE SSD'))).toBe(true);
  });
  it('by its name where a person added it and nothing else is kept', () => {
    const byHand = (id: string): Slot => ({ id, takes: 'drive', order: 1, source: 'by-hand' });
    expect(['M2_1', 'M.2 upper', 'm2 lower', 'SATA 1', 'bay 2'].filter((id) => hasNoLead(byHand(id)))).toEqual([
      'M2_1',
      'M.2 upper',
      'm2 lower',
    ]);
  });
  it('a size that is kept counts before a name that sounds otherwise', () => {
    expect(isM2Slot({ id: 'M.2 upper', attributes: { size: '2.5"' } })).toBe(false);
  });
  it('a radio in an M.2 slot is no drive', () => {
    expect(isM2Slot(named(told, 'radio'))).toBe(true);
    expect(hasNoLead(named(told, 'radio'))).toBe(false);
  });
});

describe('an M.2 module', () => {
  it.each([
    ['M.2', true],
    ['2.5"', false],
    [undefined, undefined],
  ])('of size %s: %s', (size, is) => {
    expect(isM2Module({ attributes: size === undefined ? {} : { size } })).toBe(is);
  });
});

describe('how long a card’s slot is', () => {
  it('is what the report says of it, before its name', () => {
    expect(slotLength(named(told, 'upper card'))).toBe(16);
    expect(slotLength({ id: 'x1_1', attributes: { length: 4 } })).toBe(4);
  });
  it.each([
    ['x16', 16],
    ['x16_2', 16],
    ['PCIEX8', 8],
    ['x4_1', 4],
    ['x1_1', 1],
    ['x12', undefined],
    ['PCIE2', undefined],
  ])('%s by its name alone: %s', (id, lanes) => {
    expect(slotLength({ id })).toBe(lanes);
  });
});
