import { describe, expect, it } from 'vitest';
import { minutesOfOrder, ordersOf, smithsOrder, sureRepairs } from './orders.ts';
import { orderOf, solve } from './solve.ts';

describe('choosing by p/c', () => {
  it("is Smith's rule where nothing has to be opened", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const problem = sureRepairs(seed, 'no assembly');
      expect(orderOf(solve(problem, 'ratio')), `seed ${seed}`).toEqual(smithsOrder(problem));
    }
  });

  it.each(['one level', 'two levels'] as const)('is the best of all orders with %s of shared openings', (levels) => {
    for (let seed = 1; seed <= 40; seed++) {
      const problem = sureRepairs(seed, levels);
      const all = [...ordersOf(problem.steps.map((step) => step.id))].map((order) => minutesOfOrder(problem, order));
      expect(solve(problem, 'ratio').expectedMinutes, `seed ${seed}`).toBeCloseTo(Math.min(...all), 9);
    }
  });
});
