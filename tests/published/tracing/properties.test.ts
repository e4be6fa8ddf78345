import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METHODS } from '../../../core/tracing/plan/problem/problem.ts';
import type { Exchange, ExchangeStep } from './exchange.ts';
import { diceOf, type Mix, randomProblem } from './randomProblem.ts';
import { solve } from './solve.ts';

const MIX: Mix = { faults: [2, 6], steps: [3, 8], states: [0, 4], observations: 0.34, extras: 0.4 };

const problems = fc.integer({ min: 1, max: 2 ** 31 }).map((seed) => randomProblem(seed, MIX));
const methods = fc.constantFrom(...METHODS);
const runs = { numRuns: 120, seed: 20261125 };

const near = (a: number, b: number): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(b)));

const shuffled = <T>(items: readonly T[], seed: number): T[] => {
  const dice = diceOf(seed);
  return items
    .map((item) => ({ item, at: dice.next() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
};

describe('looking ahead', () => {
  it('is never worse than p/c, two steps never worse than one, and exact never worse than any', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const minutes = Object.fromEntries(METHODS.map((method) => [method, solve(problem, method).expectedMinutes]));
        const atMost = (a: string, b: string): void => expect(minutes[a]).toBeLessThanOrEqual((minutes[b] ?? 0) + 1e-9);
        atMost('rollout-1', 'ratio');
        atMost('rollout', 'ratio');
        atMost('rollout', 'rollout-1');
        for (const method of METHODS) atMost('exact', method);
      }),
      runs,
    );
  });

  it('never costs more than handing over at once', () => {
    fc.assert(
      fc.property(problems, methods, (problem, method) => {
        expect(solve(problem, method).expectedMinutes).toBeLessThanOrEqual(problem.handOver + 1e-9);
      }),
      runs,
    );
  });
});

describe('names and order', () => {
  it('other names for faults, steps, states and outcomes change nothing but the names', () => {
    fc.assert(
      fc.property(problems, methods, (problem, method) => {
        const renamed = JSON.parse(
          JSON.stringify(problem).replace(/"([fsa]\d+|works|same|worse|yes|no)"/g, '"__proto__ $1 constructor"'),
        ) as Exchange;
        const plan = solve(problem, method);
        const again = solve(renamed, method);
        expect(again.expectedMinutes).toBe(plan.expectedMinutes);
        expect(again.first).toBe(plan.first === null ? null : `__proto__ ${plan.first} constructor`);
      }),
      runs,
    );
  });

  it('the order of faults, of states and of steps changes no minutes', () => {
    fc.assert(
      fc.property(problems, fc.integer(), methods, (problem, seed, method) => {
        const plan = solve(problem, method);
        const mixed = {
          ...problem,
          faults: shuffled(problem.faults, seed),
          assembly: shuffled(problem.assembly ?? [], seed),
        };
        near(solve(mixed, method).expectedMinutes, plan.expectedMinutes);
        const reordered = { ...problem, steps: shuffled(problem.steps, seed) };
        // Minutes are in tenths, so the rule of thumb alone meets ties between different steps.
        if (method !== 'easiest') near(solve(reordered, method).expectedMinutes, plan.expectedMinutes);
      }),
      runs,
    );
  });

  it('of two equal steps the first in the file is done first', () => {
    fc.assert(
      fc.property(problems, methods, (problem, method) => {
        const twins = problem.steps.flatMap((step) => [step, { ...step, id: `${step.id} again` }]);
        const first = solve({ ...problem, steps: twins.slice(0, 10) }, method).first;
        expect(first?.endsWith('again') ?? false).toBe(false);
      }),
      runs,
    );
  });
});

describe('what cannot happen', () => {
  it('outcomes and faults of chance 0 lead to no number that is none', () => {
    const hard = problems.map((problem) => {
      const certain = (step: ExchangeStep): ExchangeStep => ({
        ...step,
        chance: Object.fromEntries(
          Object.entries(step.chance).map(([fault, row]) => [
            fault,
            row.map((chance) => (chance === Math.max(...row) ? 1 : 0)),
          ]),
        ),
      });
      const faults = problem.faults.map((fault, at) => ({ ...fault, weight: at % 2 === 0 ? fault.weight : 0 }));
      return { ...problem, faults, steps: problem.steps.map(certain) };
    });
    fc.assert(
      fc.property(hard, methods, (problem, method) => {
        const plan = solve(problem, method);
        expect(Number.isFinite(plan.expectedMinutes)).toBe(true);
        expect(plan.expectedMinutes).toBeLessThanOrEqual(problem.handOver + 1e-9);
      }),
      runs,
    );
  });

  it('a fault of weight 0 may as well not be there', () => {
    fc.assert(
      fc.property(problems, methods, (problem, method) => {
        const row = (step: ExchangeStep): number[] => step.outcomes.map((_, at) => (at === 0 ? 1 : 0));
        const ghost = {
          ...problem,
          faults: [...problem.faults, { id: 'ghost', weight: 0 }],
          steps: problem.steps.map((step) => ({ ...step, chance: { ...step.chance, ghost: row(step) } })),
        };
        near(solve(ghost, method).expectedMinutes, solve(problem, method).expectedMinutes);
      }),
      runs,
    );
  });
});

describe('minutes', () => {
  it('counted in other units give the same plan in other units', () => {
    fc.assert(
      fc.property(problems, methods, fc.constantFrom(60, 1 / 60, 1e6), (problem, method, scale) => {
        const times = (minutes: Record<string, number> = {}): Record<string, number> =>
          Object.fromEntries(Object.entries(minutes).map(([id, each]) => [id, each * scale]));
        const scaled: Exchange = {
          ...problem,
          handOver: problem.handOver * scale,
          assembly: (problem.assembly ?? []).map((state) => ({
            ...state,
            opening: state.opening * scale,
            closing: state.closing * scale,
          })),
          steps: problem.steps.map((step) => ({
            ...step,
            minutes: step.minutes * scale,
            waiting: (step.waiting ?? 0) * scale,
            harm: times(step.harm),
            finish: times(step.finish),
          })),
        };
        const plan = solve(problem, method);
        near(solve(scaled, method).expectedMinutes / scale, plan.expectedMinutes);
      }),
      runs,
    );
  });

  it('a step that tells nothing and mends nothing changes nothing', () => {
    fc.assert(
      // The rule of thumb takes any outcome between 0.1 % and 99.9 % for telling something, so it alone may do it.
      fc.property(
        problems,
        fc.constantFrom(...METHODS.filter((method) => method !== 'easiest')),
        fc.nat({ max: 20 }),
        (problem, method, minutes) => {
          const useless = { id: 'useless', minutes: minutes + 0.5, outcomes: ['a', 'b'], chance: { '*': [0.3, 0.7] } };
          const plan = solve(problem, method);
          near(solve({ ...problem, steps: [...problem.steps, useless] }, method).expectedMinutes, plan.expectedMinutes);
        },
      ),
      runs,
    );
  });
});

describe('harm and finish', () => {
  /** One forced step: the only one there is, cheaper than handing over. */
  const forced = (harm: Record<string, number>, finish: number): Exchange => ({
    faults: [
      { id: 'f1', weight: 0.3 },
      { id: 'f2', weight: 0.7 },
    ],
    steps: [
      {
        id: 's',
        minutes: 5,
        outcomes: ['works', 'same'],
        cures: ['works'],
        chance: { f1: [0.9, 0.1], f2: [0.8, 0.2] },
        harm,
        finish: { works: finish },
      },
    ],
    waitingWeight: 1,
    handOver: 1e6,
  });

  it('enter linearly in the belief and in their minutes', () => {
    const minutes = fc.integer({ min: 0, max: 500 });
    fc.assert(
      fc.property(methods, minutes, minutes, minutes, (method, harm1, harm2, finish) => {
        const plain = solve(forced({}, 0), method).expectedMinutes;
        const charged = solve(forced({ f1: harm1, f2: harm2 }, finish), method).expectedMinutes;
        near(charged - plain, 0.3 * harm1 + 0.7 * harm2 + (0.3 * 0.9 + 0.7 * 0.8) * finish);
      }),
      runs,
    );
  });

  it('harm that all faults share is as good as more minutes', () => {
    fc.assert(
      fc.property(problems, methods, fc.integer({ min: 1, max: 30 }), (problem, method, more) => {
        const longer = problem.steps.map((step) => ({ ...step, minutes: step.minutes + more }));
        const hurting = problem.steps.map((step) => ({
          ...step,
          harm: Object.fromEntries(problem.faults.map(({ id }) => [id, (step.harm?.[id] ?? 0) + more])),
        }));
        near(
          solve({ ...problem, steps: hurting }, method).expectedMinutes,
          solve({ ...problem, steps: longer }, method).expectedMinutes,
        );
      }),
      runs,
    );
  });
});
