import { expect, it } from 'vitest';
import { odds } from './odds.ts';

it('odds are a chance against what is left, and have an end where nothing is left', () => {
  expect([0, 0.5, 0.75, 0.9].map(odds)).toEqual([0, 1, 3, expect.closeTo(9, 9)]);
  expect(odds(1)).toBe(1e12);
});
