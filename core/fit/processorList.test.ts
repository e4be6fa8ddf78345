import { expect, it } from 'vitest';
import { firmwareReaches, processorOnList } from './processorList.ts';

it('a processor is on a board’s own list by its name, from the firmware on that stands behind it', () => {
  const board = { 'processor-list': ['Corvane K4-58@1407', ' corvane k4-60 '] };
  expect(processorOnList(board, 'corvane k4-58 ')).toEqual({ is: 'listed', from: '1407' });
  expect(processorOnList(board, 'Corvane K4-60')).toEqual({ is: 'listed', from: null });
  expect(processorOnList(board, 'Corvane K4-62')).toEqual({ is: 'not-listed' });
  expect(processorOnList({}, 'Corvane K4-58')).toEqual({ is: 'unknown' });
});

it.each([
  ['1407', '1407', true],
  ['7.B1', '7.B1', true],
  ['7.B1', '7.B2', undefined],
  ['1501', '1407', true],
  ['1406', '1407', false],
  ['1.10', '1.9', true],
  ['1.2', '1.2.0', true],
  ['1.2', '1.2.1', false],
  ['1.2.1', '1.2', true],
])('firmware %s reaches %s: %s', (have, need, reaches) => {
  expect(firmwareReaches(have, need)).toBe(reaches);
});
