import { describe, expect, it } from 'vitest';
import { dimmSlotsFromReport, type MemoryRecord } from './dimmLabels.ts';
import { placementOf } from './placement.ts';

const labels = ['ChannelA-DIMM1', 'ChannelA-DIMM2', 'ChannelB-DIMM1', 'ChannelB-DIMM2'];
const table = (
  locators: readonly string[],
  filled: readonly number[],
  type = 'DDR4',
  banks: readonly string[] = [],
): readonly MemoryRecord[] =>
  locators.map((locator, index) => ({
    locator,
    bank: banks[index] ?? null,
    filled: filled.includes(index + 1),
    type: filled.includes(index + 1) ? type : null,
  }));

describe('where her modules sat while it still worked', () => {
  const hers = table(labels, [2, 3]);
  it('by labels alone is something to look up, not a mistake', () => {
    expect(placementOf(hers)).toMatchObject({ evidence: 'labels', says: 'look-in-manual', pattern: 'mixed' });
  });
  it('is not as the board’s manual asks, once someone has read it', () => {
    expect(placementOf(hers, ['A2', 'B2'])).toEqual({
      evidence: 'manual',
      says: 'not-as-manual',
      asks: ['A2', 'B2'],
      filled: ['A2', 'B1'],
    });
    expect(placementOf(table(labels, [2, 4]), ['B2', 'A2'])).toMatchObject({ says: 'as-manual' });
  });
});

it('a module more than the manual asks for is not as it asks, though all it asks for are there', () => {
  expect(placementOf(table(labels, [1, 2, 4]), ['A2', 'B2'])).toMatchObject({ says: 'not-as-manual' });
});

it('places by order alone are counted for pairs in four slots, and for nothing else', () => {
  const nameless = (slots: number, filled: readonly number[]) =>
    placementOf(
      table(
        Array.from({ length: slots }, () => 'slot'),
        filled,
      ),
    );
  expect(nameless(4, [2, 4])).toMatchObject({ evidence: 'order', counted: { memory: null } });
  for (const [slots, filled] of [
    [6, [2, 4]],
    [4, [2, 4, 1]],
    [4, [2]],
  ] as const)
    expect(nameless(slots, filled)).toMatchObject({ evidence: 'order', says: 'proves-nothing', counted: null });
});

describe('what labels can prove', () => {
  it('two modules in one channel share it, whatever the manual prefers', () => {
    expect(placementOf(table(labels, [3, 4]))).toMatchObject({
      evidence: 'labels',
      says: 'one-channel',
      counted: { machines: 409, of: 9854, memory: 'DDR4' },
    });
  });
  it('first or second of each channel is only something to look up', () => {
    expect(placementOf(table(labels, [1, 3]))).toMatchObject({ says: 'look-in-manual', pattern: 'first-of-each' });
    expect(placementOf(table(labels, [2, 4], 'DDR5'))).toMatchObject({
      pattern: 'second-of-each',
      counted: { machines: 1247, of: 1285 },
    });
  });
  it('counts places by rank, whether the firmware begins at 0 or at 1', () => {
    const fromZero = labels.map((label) => label.replace(/\d/, (digit) => String(Number(digit) - 1)));
    expect(placementOf(table(fromZero, [2, 4]))).toMatchObject({ pattern: 'second-of-each' });
  });
  it('reads the channel from the bank line where the slot’s own line has only a number', () => {
    const banks = ['P0 CHANNEL A', 'P0 CHANNEL A', 'P0 CHANNEL B', 'P0 CHANNEL B'];
    expect(placementOf(table(['DIMM 0', 'DIMM 1', 'DIMM 0', 'DIMM 1'], [1, 2], 'DDR4', banks))).toMatchObject({
      says: 'one-channel',
    });
  });
  it('tells two controllers’ channels apart', () => {
    expect(placementOf(table(['Controller0-ChannelA-DIMM0', 'Controller1-ChannelA-DIMM0'], [1]))).toMatchObject({
      evidence: 'labels',
      says: 'one-module',
    });
  });
  it('gives no figure for memory that was not counted', () => {
    expect(placementOf(table(labels, [1, 2], 'DDR2'))).toEqual({
      evidence: 'labels',
      says: 'one-channel',
      counted: null,
    });
  });
});

describe('what order alone can prove', () => {
  it('is nothing: it gives how often that was seen, and no verdict', () => {
    expect(placementOf(table(['DIMM1', 'DIMM2', 'DIMM3', 'DIMM4'], [1, 2]))).toMatchObject({
      evidence: 'order',
      says: 'proves-nothing',
      counted: { machines: 2077, of: 21773 },
    });
  });
  it('a row of slots called A0 to A3 names no channel', () => {
    expect(placementOf(table(['A0', 'A1', 'A2', 'A3'], [1, 2]))).toMatchObject({
      evidence: 'order',
      says: 'proves-nothing',
    });
  });
  it('is all there is when one label is missing or two are the same', () => {
    expect(placementOf(table(['ChannelA-DIMM1', '', 'ChannelB-DIMM1', 'ChannelB-DIMM2'], [1, 3]))).toMatchObject({
      evidence: 'order',
    });
    expect(placementOf(table(['DIMM_A1', 'DIMM_A1', 'DIMM_B1', 'DIMM_B2'], [1, 3]))).toMatchObject({
      evidence: 'order',
    });
  });
  it('without slots or modules there is nothing to say', () => {
    expect(placementOf([])).toEqual({ evidence: 'none', says: 'no-slots-listed' });
    expect(placementOf(table(labels, []))).toEqual({ evidence: 'none', says: 'no-module-listed' });
  });
});

describe('DIMM slots from the machine’s own report', () => {
  it('are named by channel and place, in that order, and keep the label they were read from', () => {
    const { slots, gaps } = dimmSlotsFromReport(
      table(['ChannelB-DIMM0', 'ChannelB-DIMM1', 'ChannelA-DIMM0', 'ChannelA-DIMM1'], [2, 4]),
    );
    expect(slots.map(({ id, order, channel }) => [id, order, channel])).toEqual([
      ['B1', 3, 'B'],
      ['B2', 4, 'B'],
      ['A1', 1, 'A'],
      ['A2', 2, 'A'],
    ]);
    expect(slots[0]?.attributes).toEqual({ label: 'ChannelB-DIMM0' });
    expect(gaps).toEqual([]);
  });
  it('keep the report’s names where no channel can be read, and say what is not known', () => {
    const { slots, gaps } = dimmSlotsFromReport(table(['DIMM3', 'DIMM1'], [2]));
    expect(slots.map(({ id }) => id)).toEqual(['DIMM3', 'DIMM1']);
    expect(gaps).toEqual(['memory-channels', 'dimm-order']);
  });
  it('are counted through when their names are missing or the same', () => {
    expect(dimmSlotsFromReport(table(['DIMM 0', 'DIMM 0', ''], [1])).slots.map(({ id }) => id)).toEqual([
      'DIMM 1',
      'DIMM 2',
      'DIMM 3',
    ]);
  });
});
