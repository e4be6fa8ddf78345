import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FlowColumn, flow, type Slab, turnsFor } from './flow.ts';

const TOP = 40;
const BOTTOM = 740;

/** Sets slabs and notes where each came to stand. */
function set(heights: readonly { readonly height: number; readonly keep: boolean }[], start: number) {
  const stood: { slab: number; page: number; y: number }[] = [];
  let page = 1;
  const slabs = heights.map(
    ({ height, keep }, slab): Slab => ({ height, keep, draw: (y) => stood.push({ slab, page, y }) }),
  );
  const column: FlowColumn = { top: TOP, bottom: () => BOTTOM, turn: () => (page += 1) };
  flow(slabs, column, start);
  return stood;
}

const slabs = fc.array(fc.record({ height: fc.integer({ min: 1, max: 160 }), keep: fc.boolean() }), {
  minLength: 1,
  maxLength: 60,
});

test('no row runs off its page, and all are set once, in order', () => {
  fc.assert(
    fc.property(slabs, fc.integer({ min: TOP, max: BOTTOM }), (heights, start) => {
      const stood = set(heights, start);
      expect(stood.map(({ slab }) => slab)).toEqual(heights.map((_, index) => index));
      for (const { slab, y } of stood) expect(y + (heights[slab]?.height ?? 0)).toBeLessThanOrEqual(BOTTOM + 0.01);
    }),
  );
});

test('pages foreseen are the pages turned, and nothing is drawn for it', () => {
  fc.assert(
    fc.property(slabs, fc.integer({ min: TOP, max: BOTTOM }), (heights, start) => {
      const unseen = heights.map((one): Slab => ({ ...one, draw: () => expect.unreachable('drawn') }));
      const turned = Math.max(...set(heights, start).map(({ page }) => page)) - 1;
      expect(turnsFor(unseen, { top: TOP, bottomOf: () => BOTTOM }, start)).toBe(turned);
    }),
  );
});

test('what leads over stands on the page of what it leads to, wherever both fit on one page', () => {
  fc.assert(
    fc.property(slabs, fc.integer({ min: TOP, max: BOTTOM }), (heights, start) => {
      const stood = set(heights, start);
      for (let from = 0; from < heights.length; ) {
        let to = from;
        while (heights[to]?.keep && to < heights.length - 1) to++;
        const group = heights.slice(from, to + 1).reduce((sum, { height }) => sum + height, 0);
        if (group <= BOTTOM - TOP) {
          const pages = new Set(stood.slice(from, to + 1).map(({ page }) => page));
          expect(pages.size).toBe(1);
        }
        from = to + 1;
      }
    }),
  );
});

test('a table that goes over begins the next page with its head', () => {
  const heads: number[] = [];
  const row: Slab = { height: 100, draw: () => {}, repeat: { height: 20, draw: (y) => heads.push(y) } };
  const end = flow(
    Array.from({ length: 10 }, () => row),
    { top: TOP, bottom: () => BOTTOM, turn: () => {} },
    TOP,
  );
  expect(heads).toEqual([TOP]);
  expect(end).toBe(TOP + 20 + 3 * 100);
});
