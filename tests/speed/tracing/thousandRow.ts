import { planProblem } from '../../../core/tracing/plan/planProblem.ts';
import { METHODS } from '../../../core/tracing/plan/problem/problem.ts';
import { randomProblem } from '../../published/tracing/randomProblem.ts';
import { read } from '../../published/tracing/solve.ts';
import { type Figure, type Row, shown } from './row.ts';

/** A file of a thousand steps is answered or refused with a limit; how long that takes is shown, no bar was set. */
export const thousandRow: Row = {
  name: 'a thousand steps',
  measure: ({ short }) => {
    const mix = { faults: [40, 40], steps: [1000, 1000], states: [4, 4], observations: 1 / 3, extras: 0 } as const;
    const problem = read(randomProblem(1, mix));
    const methods = short ? METHODS.filter((method) => !method.startsWith('rollout')) : METHODS;
    return {
      figures: methods.map((method): Figure => {
        const started = performance.now();
        const answered = planProblem(problem, { method });
        const seconds = ((performance.now() - started) / 1000).toFixed(1);
        return shown(method, `${answered.ok ? 'answered' : answered.refusal.refused} after ${seconds} s`);
      }),
    };
  },
};
