import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossing, setCallOuts } from './callOuts.ts';

const parts = fc
  .uniqueArray(fc.record({ x: fc.integer({ min: 0, max: 600 }), y: fc.integer({ min: 0, max: 600 }) }), {
    maxLength: 8,
    selector: (point) => `${point.x},${point.y}`,
  })
  .chain((anchors) =>
    fc.tuple(
      ...anchors.map((anchor, i) =>
        fc.record({ id: fc.constant(String(i)), height: fc.constantFrom(23, 46, 69), anchor: fc.constant(anchor) }),
      ),
    ),
  );

describe('call-outs beside the drawing', () => {
  it('have leads that never cross, wherever the parts are', () => {
    fc.assert(
      fc.property(parts, (wanted) => {
        expect(crossing(setCallOuts(wanted, 660, 0, 660))).toBeUndefined();
      }),
      { numRuns: 2000 },
    );
  });
  it('stand at the height of their part when there is room', () => {
    const [one] = setCallOuts([{ id: 'board', height: 46, anchor: { x: 400, y: 200 } }], 660, 0, 660);
    expect(one?.leaves.y).toBeCloseTo(200);
  });
  it('never touch each other', () => {
    fc.assert(
      fc.property(parts, (wanted) => {
        const set = [...setCallOuts(wanted, 660, 0, 660)].sort((a, b) => a.top - b.top);
        for (const [i, one] of set.entries()) {
          const height = wanted.find((part) => part.id === one.id)?.height ?? 0;
          const next = set[i + 1];
          if (next) expect(next.top - one.top).toBeGreaterThanOrEqual(height - 1e-6);
        }
      }),
    );
  });
});
