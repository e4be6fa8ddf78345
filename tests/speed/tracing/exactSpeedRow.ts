import { ExactPlan, MOST_STATES } from '../../../core/tracing/plan/ahead/exact.ts';
import { compileProblem } from '../../../core/tracing/plan/problem/compiledProblem.ts';
import { Effort } from '../../../core/tracing/plan/problem/effort.ts';
import { countStates } from '../../../core/tracing/plan/states/countStates.ts';
import { startOf } from '../../../core/tracing/plan/states/planState.ts';
import { type Mix, randomProblem } from '../../published/tracing/randomProblem.ts';
import { read } from '../../published/tracing/solve.ts';
import { atMost, type Figure, quantile, type Row, shown } from './row.ts';

const TWELVE: Mix = { faults: [8, 8], steps: [12, 12], states: [3, 3], observations: 1 / 3, extras: 0 };
/** Near the limit: 3^5 × 2^13 = 1,990,656 states. */
const LARGE: Mix = { faults: [8, 8], steps: [18, 18], states: [3, 3], observations: 5 / 18, extras: 0 };

export const exactSpeedRow: Row = {
  name: 'exact in time',
  measure: ({ short }) => ({
    figures: [
      ...timesOf('12 steps × 8 faults', TWELVE, short ? 100 : 500, 2),
      ...timesOf('18 steps × 8 faults', LARGE, short ? 1 : 10),
    ],
  }),
};

function timesOf(name: string, mix: Mix, count: number, bar?: number): Figure[] {
  const seconds: number[] = [];
  let most = 0;
  for (let seed = 1; seed <= count; seed++) {
    const problem = read(randomProblem(seed, mix));
    const started = performance.now();
    const compiled = compileProblem(problem);
    const start = startOf(compiled);
    new ExactPlan(compiled, start, new Effort());
    seconds.push((performance.now() - started) / 1000);
    most = Math.max(most, Number(countStates(compiled, start, 1, MOST_STATES).states));
  }
  const longest = Math.max(...seconds);
  return [
    shown(`${name}: p95 of ${count}`, `${quantile(seconds, 0.95).toFixed(3)} s`),
    bar === undefined
      ? shown(`${name}: longest`, `${longest.toFixed(3)} s`)
      : atMost(`${name}: longest`, longest, bar, ' s'),
    shown(`${name}: states at most, of ${MOST_STATES} allowed`, `${most}`),
  ];
}
