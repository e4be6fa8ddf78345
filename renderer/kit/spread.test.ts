import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spread } from './spread.ts';

describe('setting labels along a line', () => {
  it('leaves what does not collide where it wants to stand', () => {
    expect(
      spread(
        [
          { at: 20, size: 10 },
          { at: 60, size: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([20, 60]);
  });
  it('shares the shift between two that collide', () => {
    expect(
      spread(
        [
          { at: 50, size: 20 },
          { at: 50, size: 20 },
        ],
        0,
        100,
      ),
    ).toEqual([40, 60]);
  });
  it('never overlaps, never leaves its place, and keeps the order, as long as all fit', () => {
    const things = fc.array(
      fc.record({ at: fc.double({ min: 0, max: 500, noNaN: true }), size: fc.integer({ min: 5, max: 30 }) }),
      { maxLength: 16 },
    );
    fc.assert(
      fc.property(things, (list) => {
        const sorted = [...list].sort((a, b) => a.at - b.at);
        const set = spread(sorted, 0, 500);
        for (const [i, one] of sorted.entries()) {
          const here = set[i] ?? Number.NaN;
          expect(here - one.size / 2).toBeGreaterThanOrEqual(-1e-6);
          expect(here + one.size / 2).toBeLessThanOrEqual(500 + 1e-6);
          const next = sorted[i + 1];
          if (next) expect((set[i + 1] ?? Number.NaN) - here).toBeGreaterThanOrEqual((one.size + next.size) / 2 - 1e-6);
        }
      }),
    );
  });
});
