import { expect, it } from 'vitest';
import type { Slot } from '../custody/slot.ts';
import { dimmOrder } from './dimmOrder.ts';

const machine = (...ids: readonly string[]) => ({
  slots: {
    slots: ids.map((id, at): Slot => ({ id, takes: 'dimm', order: at + 1, source: 'by-hand' })),
    gaps: [],
  },
});
const fill = (ids: readonly string[], modules: number) => dimmOrder(machine(...ids), modules)?.fill;
const FOUR = ['A1', 'A2', 'B1', 'B2'];

it('the default is the one of boards with as many slots, by their names', () => {
  expect(fill(FOUR, 2)).toEqual(['A2', 'B2']);
  expect(fill(['A1', 'B1'], 2)).toEqual(['A1', 'B1']);
  expect(fill(['A1', 'B1', 'C1'], 2)).toBeUndefined();
  expect(fill(['DIMM 1', 'DIMM 2'], 2)).toBeUndefined();
  expect(fill(FOUR, 3)).toBeUndefined();
});

it('what somebody read in the manual comes before any default', () => {
  expect(dimmOrder({ ...machine(...FOUR), dimmOrder: { 2: ['A1', 'B1'] } }, 2)).toMatchObject({
    fill: ['A1', 'B1'],
    evidence: 'board-manual',
  });
});
