import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearScale, logOddsHeight } from './scale.ts';
import { evenTicks } from './ticks.ts';

describe('a ruler', () => {
  it('labels round figures only, far enough apart to be read', () => {
    const range = fc.tuple(
      fc.integer({ min: -1000, max: 1000 }),
      fc.integer({ min: 1, max: 100_000 }),
      fc.integer({ min: 200, max: 1200 }),
    );
    fc.assert(
      fc.property(range, ([from, span, length]) => {
        const scale = linearScale(from, from + span, length);
        const long = evenTicks(from, from + span, length, String).filter((tick) => tick.size === 'long');
        for (const [i, tick] of long.entries()) {
          const next = long[i + 1];
          if (next) expect(scale.at(next.at) - scale.at(tick.at)).toBeGreaterThanOrEqual(64 - 1e-6);
        }
      }),
    );
  });
  it('reads 0, 100, 200, 300 with four units between, as on the counter', () => {
    const ticks = evenTicks(0, 300, 344, String);
    expect(ticks.filter((tick) => tick.size === 'long').map((tick) => tick.label)).toEqual(['0', '100', '200', '300']);
    expect(ticks.filter((tick) => tick.size === 'short')).toHaveLength(12);
  });
});

describe('the height of a chance', () => {
  it('is log-odds: from 1 in 100 at the foot to 99 in 100 at the head, the same both ways from even', () => {
    expect(logOddsHeight(0.01)).toBeCloseTo(0);
    expect(logOddsHeight(0.99)).toBeCloseTo(1);
    fc.assert(
      fc.property(fc.double({ min: 0.011, max: 0.5, noNaN: true }), (p) => {
        expect(logOddsHeight(p) + logOddsHeight(1 - p)).toBeCloseTo(1);
      }),
    );
  });
});
