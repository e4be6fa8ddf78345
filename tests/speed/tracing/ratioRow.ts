import { minutesOfOrder, ordersOf, smithsOrder, sureRepairs } from '../../published/tracing/orders.ts';
import { orderOf, solve } from '../../published/tracing/solve.ts';
import { atMost, type Row, shown } from './row.ts';

export const ratioRow: Row = {
  name: "ratio is Smith's rule and the cluster optimum",
  measure: ({ short }) => {
    const plain = short ? 1000 : 5000;
    const clustered = short ? 100 : 500;
    let otherOrders = 0;
    for (let seed = 1; seed <= plain; seed++) {
      const problem = sureRepairs(seed, 'no assembly');
      if (orderOf(solve(problem, 'ratio')).join() !== smithsOrder(problem).join()) otherOrders++;
    }
    const away = { 'one level': 0, 'two levels': 0 };
    for (const levels of ['one level', 'two levels'] as const) {
      for (let seed = 1; seed <= clustered; seed++) {
        const problem = sureRepairs(seed, levels);
        const ids = problem.steps.map((step) => step.id);
        const best = ordersOf(ids).reduce((least, order) => Math.min(least, minutesOfOrder(problem, order)), Infinity);
        away[levels] = Math.max(away[levels], Math.abs(solve(problem, 'ratio').expectedMinutes - best));
      }
    }
    return {
      figures: [
        atMost(`orders that differ from Smith's, of ${plain}`, otherOrders, 0, '', 0),
        shown('random problems per kind of shared openings, 4 to 7 steps', `${clustered}`),
        atMost('one level of openings: away from the best order, minutes', away['one level'], 1e-9, '', -1),
        atMost('two levels of openings: away from the best order, minutes', away['two levels'], 1e-9, '', -1),
      ],
    };
  },
};
