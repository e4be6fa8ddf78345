import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TORN_DEPTH, tornEdge } from './torn.ts';

const points = (path: string) =>
  [...path.matchAll(/L(-?[\d.]+) (-?[\d.]+)/g)].map((match) => [Number(match[1]), Number(match[2])] as const);

describe('the torn edge of a suspect', () => {
  it('is the same each time the same part is drawn, and another for another part', () => {
    expect(tornEdge(0, 200, 50, 'psu')).toBe(tornEdge(0, 200, 50, 'psu'));
    expect(tornEdge(0, 200, 50, 'psu')).not.toBe(tornEdge(0, 200, 50, 'board'));
  });
  it('keeps within its depth, runs one way, and ends where it should, on wide parts and narrow ones', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1 }), fc.integer({ min: 8, max: 600 }), fc.boolean(), (id, width, back) => {
        const [from, to] = back ? [width, 0] : [0, width];
        const edge = points(tornEdge(from, to, 50, id));
        expect(edge.length).toBeGreaterThan(2);
        expect(edge.at(-1)).toEqual([to, 50]);
        for (const [i, [x, y]] of edge.entries()) {
          expect(Math.abs(y - 50)).toBeLessThanOrEqual(TORN_DEPTH + 0.06);
          const before = edge[i - 1]?.[0] ?? from;
          expect(back ? x <= before : x >= before).toBe(true);
        }
      }),
    );
  });
});
