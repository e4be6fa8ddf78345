import { describe, expect, it } from 'vitest';
import { chainJobs, chains, schedule } from './cases.ts';
import { type Exchange, repair } from './exchange.ts';
import { NEVER, orderOf, solve } from './solve.ts';

const total = (problem: Exchange): number => problem.faults.reduce((sum, fault) => sum + fault.weight, 0);
const weighted = (problem: Exchange, method: 'ratio' | 'exact' | 'rollout'): number =>
  solve(problem, method).expectedMinutes * total(problem);

describe('Roughgarden, Algorithms Illuminated part 3, chapter 13', () => {
  it('orders lengths 1, 2, 3 with weights 3, 2, 1 as they stand: 15', () => {
    const jobs = [1, 2, 3].map((length) => ({ id: `${length}`, length, weight: 4 - length }));
    expect(weighted(schedule(jobs), 'exact')).toBeCloseTo(15, 9);
    expect(weighted(schedule(jobs), 'ratio')).toBeCloseTo(15, 9);
    expect(orderOf(solve(schedule(jobs), 'exact'))).toEqual(['1', '2', '3']);
  });

  it('does not fall for chance minus minutes: 22, not 23', () => {
    const problem = schedule([
      { id: 'one', length: 5, weight: 3 },
      { id: 'two', length: 2, weight: 1 },
    ]);
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(weighted(problem, method)).toBeCloseTo(22, 9);
      expect(orderOf(solve(problem, method))).toEqual(['one', 'two']);
    }
  });
});

describe('Kleinberg & Tardos, Algorithm Design, chapter 4 exercise 13', () => {
  it('copies the short important job first: 18, not 46', () => {
    const problem = schedule([
      { id: 'one', length: 1, weight: 10 },
      { id: 'two', length: 3, weight: 2 },
    ]);
    for (const method of ['ratio', 'exact', 'rollout'] as const) expect(weighted(problem, method)).toBeCloseTo(18, 9);
  });

  it('keeps file order where two jobs tie: 151 with B, C, D, E, A, and E before D when E comes first in the file', () => {
    const jobs = [
      { id: 'A', length: 6, weight: 1 },
      { id: 'B', length: 2, weight: 2 },
      { id: 'C', length: 8, weight: 4 },
      { id: 'D', length: 3, weight: 1 },
      { id: 'E', length: 9, weight: 3 },
    ];
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(weighted(schedule(jobs), method)).toBeCloseTo(151, 9);
      expect(orderOf(solve(schedule(jobs), method))).toEqual(['B', 'C', 'D', 'E', 'A']);
      expect(orderOf(solve(schedule([...jobs].reverse()), method))).toEqual(['B', 'C', 'E', 'D', 'A']);
    }
  });
});

describe('Pinedo, Scheduling, section 3.1: two chains', () => {
  it('takes the chains in the order 1, 2, 5, 6, 3, 7, 4 at 1967', () => {
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(orderOf(solve(chains, method))).toEqual(['1', '2', '5', '6', '3', '7', '4']);
      expect(weighted(chains, method)).toBeCloseTo(1967, 8);
    }
    expect(solve(chains, 'exact').expectedMinutes).toBeCloseTo(22.609195, 6);
  });

  it('needs 1942 when nothing has to come first', () => {
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(weighted(schedule(chainJobs), method)).toBeCloseTo(1942, 8);
    }
  });
});

/** Constructed, not published: figures from enumeration in exact fractions. */
describe('constructed cases', () => {
  const chances = [0.4, 0.3, 0.2, 0.1];
  const minutes = [16, 6, 10, 1];
  const plain = schedule(chances.map((weight, at) => ({ id: `${at + 1}`, length: minutes[at] as number, weight })));

  it('plain p/c: 4, 2, 1, 3 at 18', () => {
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(solve(plain, method).expectedMinutes).toBeCloseTo(18, 9);
      expect(orderOf(solve(plain, method))).toEqual(['4', '2', '1', '3']);
    }
  });

  it.each([
    [0, 18, '4213'],
    [1, 18.9, '4213'],
    [2, 19.8, '4213'],
    [4, 21.6, '4213'],
    [5, 22.5, '4213'],
    [6, 23.4, '4123'],
    [8, 24.4, '4123'],
    [20, 30.4, '4123'],
    [40, 40.4, '4123'],
  ])('a shared opening of %d minutes costs %d in the order %s', (opening, expected, order) => {
    const problem: Exchange = {
      ...plain,
      assembly: [{ id: 'case', opening, closing: 0, within: null }],
      steps: plain.steps.map((step) => (step.id === '2' || step.id === '3' ? { ...step, open: ['case'] } : step)),
    };
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(solve(problem, method).expectedMinutes).toBeCloseTo(expected, 9);
      expect(orderOf(solve(problem, method)).join('')).toBe(order);
    }
  });

  it.each([
    [40, 50, ['one', 'two']],
    [60, 60, ['one', 'two']],
    [70, 60, ['one']],
  ])('handing over at 100 beside a repair of %d minutes: %d', (second, expected, order) => {
    const problem: Exchange = {
      faults: [
        { id: 'one', weight: 0.5 },
        { id: 'two', weight: 0.3 },
        { id: 'rest', weight: 0.2 },
      ],
      steps: [repair('one', 10, { one: 1 }), repair('two', second, { two: 1 })],
      waitingWeight: 1,
      handOver: 100,
    };
    for (const method of ['ratio', 'exact', 'rollout'] as const) {
      expect(solve(problem, method).expectedMinutes).toBeCloseTo(expected, 9);
      expect(orderOf(solve(problem, method))).toEqual(order);
    }
  });

  it('actions that overlap: 1.45 exactly, 1.55 by p/c', () => {
    const problem: Exchange = {
      faults: [0.2, 0.25, 0.4, 0.15].map((weight, at) => ({ id: `c${at + 1}`, weight })),
      steps: [repair('A1', 1, { c1: 1, c2: 1 }), repair('A2', 1, { c3: 1, c4: 1 }), repair('A3', 1, { c1: 1, c3: 1 })],
      waitingWeight: 1,
      handOver: NEVER,
    };
    expect(solve(problem, 'exact').expectedMinutes).toBeCloseTo(1.45, 9);
    expect(solve(problem, 'rollout').expectedMinutes).toBeCloseTo(1.45, 9);
    expect(solve(problem, 'ratio').expectedMinutes).toBeCloseTo(1.55, 9);
  });
});
