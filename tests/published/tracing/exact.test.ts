import { describe, expect, it } from 'vitest';
import { METHODS } from '../../../core/tracing/plan/problem/problem.ts';
import type { WrittenPolicy } from './exchange.ts';
import { exhaustiveMinutes, minutesOfPolicy } from './exhaustive.ts';
import { type Mix, randomProblem } from './randomProblem.ts';
import { solve } from './solve.ts';

const SMALL: Mix = { faults: [2, 5], steps: [3, 5], states: [0, 4], observations: 0.34, extras: 0.4 };
const LARGER: Mix = { ...SMALL, steps: [6, 6], states: [1, 3] };

/** Made-up problems, seeded: assembly trees, harm, finishing, waiting, closed cases, third outcomes. */
describe('against trying everything', () => {
  it('exact equals it to 1e-9 on 500 small problems', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const problem = randomProblem(seed, SMALL);
      expect(
        Math.abs(solve(problem, 'exact').expectedMinutes - exhaustiveMinutes(problem)),
        `seed ${seed}`,
      ).toBeLessThan(1e-9);
    }
  });

  it('exact equals it to 1e-9 on problems of six steps', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const problem = randomProblem(seed, LARGER);
      expect(
        Math.abs(solve(problem, 'exact').expectedMinutes - exhaustiveMinutes(problem)),
        `seed ${seed}`,
      ).toBeLessThan(1e-9);
    }
  });

  it('every method says exactly what its written policy costs, and none beats the cheapest', () => {
    for (let seed = 1; seed <= 250; seed++) {
      const problem = randomProblem(seed, SMALL);
      const cheapest = exhaustiveMinutes(problem);
      for (const method of METHODS) {
        const { expectedMinutes, policy } = solve(problem, method);
        const written = minutesOfPolicy(problem, policy as WrittenPolicy);
        expect(Math.abs(expectedMinutes - written), `seed ${seed}, ${method}`).toBeLessThan(1e-9);
        expect(expectedMinutes, `seed ${seed}, ${method}`).toBeGreaterThan(cheapest - 1e-9);
      }
    }
  });
});
