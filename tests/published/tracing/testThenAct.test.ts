import { describe, expect, it } from 'vitest';
import { wildcatter } from './cases.ts';
import { type Exchange, repair } from './exchange.ts';
import { NEVER, solve } from './solve.ts';

describe('the oil wildcatter', () => {
  it.each(['exact', 'rollout', 'rollout-1'] as const)(
    'tests first, drills unless there is no structure: 22.5 (%s)',
    (method) => {
      const plan = solve(wildcatter(10), method);
      expect(200 - plan.expectedMinutes).toBeCloseTo(22.5, 9);
      expect(JSON.stringify(plan.policy)).toBe(
        '{"step":"test","then":{"closed":{"step":"drill","then":{"drilled":"done"}},' +
          '"open":{"step":"drill","then":{"drilled":"done"}},"none":"hand over"}}',
      );
    },
  );

  it('is worth 20 without the test, which pays up to 12.5', () => {
    expect(200 - solve(wildcatter(1000), 'exact').expectedMinutes).toBeCloseTo(20, 9);
    expect(solve(wildcatter(12.49), 'exact').first).toBe('test');
    expect(solve(wildcatter(12.51), 'exact').first).toBe('drill');
    expect(200 - solve(wildcatter(0), 'exact').expectedMinutes).toBeCloseTo(32.5, 9);
  });

  it('is worth 55 with a test that tells everything for nothing', () => {
    const perfect = wildcatter(0);
    const test = perfect.steps[1];
    if (test) test.chance = { dry: [0, 0, 1], wet: [0, 1, 0], soaking: [1, 0, 0] };
    expect(200 - solve(perfect, 'exact').expectedMinutes).toBeCloseTo(55, 9);
  });
});

/** Constructed, not published: figures from enumeration in exact fractions. */
describe('one question before two repairs', () => {
  const asked = (minutes: number): Exchange => ({
    faults: [
      { id: 'A', weight: 0.6 },
      { id: 'B', weight: 0.4 },
    ],
    steps: [
      repair('mend A', 24, { A: 1 }),
      repair('mend B', 20, { B: 1 }),
      { id: 'ask', minutes, outcomes: ['yes', 'no'], chance: { A: [0.9, 0.1], B: [0.2, 0.8] } },
    ],
    waitingWeight: 1,
    handOver: NEVER,
  });

  it.each(['exact', 'rollout', 'rollout-1'] as const)('asks for 4 minutes and needs 29.52 (%s)', (method) => {
    const plan = solve(asked(4), method);
    expect(plan.expectedMinutes).toBeCloseTo(29.52, 9);
    expect(plan.first).toBe('ask');
  });

  it('asks up to 6.48 minutes and mends A first beyond, at 32', () => {
    expect(solve(asked(6.47), 'exact').first).toBe('ask');
    expect(solve(asked(6.49), 'exact').first).toBe('mend A');
    expect(solve(asked(6.49), 'exact').expectedMinutes).toBeCloseTo(32, 9);
    expect(solve(asked(6.49), 'ratio').expectedMinutes).toBeCloseTo(32, 9);
  });
});
