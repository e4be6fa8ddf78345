import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { TagStock } from '../sizes.ts';
import { codeSide, labelSize, ROLL_MM, tagGrid, tagSize } from './stock.ts';

/** Modules of the smallest code (ISO/IEC 18004 version 1) with four white ones on either side. */
const MODULES = 21 + 2 * 4;

test('a tag fits any roll of 12 to 120 mm, and its code stays coarse enough to be read', () => {
  fc.assert(
    fc.property(fc.double({ min: ROLL_MM.least, max: ROLL_MM.most, noNaN: true }), (widthMm) => {
      const size = tagSize({ on: 'roll', widthMm });
      expect(size.widthMm).toBe(widthMm);
      expect(codeSide(size)).toBeLessThanOrEqual(widthMm);
      expect(size.heightMm).toBeGreaterThan(codeSide(size));
      // 0.25 mm a module is what office scanners are usually sold for: common practice, no source.
      expect(codeSide(size) / MODULES).toBeGreaterThan(0.25);
    }),
  );
});

test.each<TagStock>([{ on: 'A4' }, { on: 'Letter' }])(
  'the tags of a sheet of %o lie within its white edge',
  (stock) => {
    const [grid, size] = [tagGrid(stock), tagSize(stock)];
    if (!grid) throw new Error('no grid');
    const page = { A4: [210, 297], Letter: [215.9, 279.4] }[grid.page] ?? [];
    expect(grid.left).toBeGreaterThanOrEqual(10);
    expect(grid.left + grid.across * size.widthMm).toBeLessThanOrEqual((page[0] ?? 0) - 10);
    expect(grid.top + grid.down * size.heightMm).toBeLessThanOrEqual((page[1] ?? 0) - 10);
    expect(grid.across * grid.down).toBeGreaterThanOrEqual(30);
  },
);

test('the label of a part is as wide as the roll; without one it is 62 × 40 mm', () => {
  expect(labelSize(undefined)).toEqual({ widthMm: 62, heightMm: 40 });
  expect(labelSize({ on: 'A4' })).toEqual({ widthMm: 62, heightMm: 40 });
  expect(labelSize({ on: 'roll', widthMm: 29 })).toEqual({ widthMm: 29, heightMm: 62 });
});
