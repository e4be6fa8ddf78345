import { LookAhead } from '../../../core/tracing/plan/ahead/lookAhead.ts';
import { writeOut } from '../../../core/tracing/plan/ahead/policyTree.ts';
import { ratioBase } from '../../../core/tracing/plan/orders/rememberedBase.ts';
import { compileProblem } from '../../../core/tracing/plan/problem/compiledProblem.ts';
import { Effort } from '../../../core/tracing/plan/problem/effort.ts';
import { METHODS, type Method, type TracingProblem } from '../../../core/tracing/plan/problem/problem.ts';
import { type PlanState, startOf } from '../../../core/tracing/plan/states/planState.ts';
import { stateSpaceOf } from '../../../core/tracing/plan/states/stateSpace.ts';
import { type Mix, randomProblem } from '../../published/tracing/randomProblem.ts';
import { read, solve } from '../../published/tracing/solve.ts';
import { atMost, type Figure, mean, quantile, type Row, shown } from './row.ts';

/** 10 to 12 steps, a third of them pure observations, over trees of 2 to 4 assembly states. */
const PLAIN: Mix = { faults: [6, 10], steps: [10, 12], states: [2, 4], observations: 1 / 3, extras: 0 };
/** The same with harm, waiting, finishing, closed cases and third outcomes in some. */
const FULL: Mix = { ...PLAIN, extras: 0.3 };

export const rolloutRow: Row = {
  name: 'rollout against exact',
  measure: ({ short }) => {
    const plain = gapsOf('plain', PLAIN, short ? 1000 : 4000);
    return { figures: [...plain, ...gapsOf('with extras', FULL, short ? 300 : 4000)] };
  },
};

/** Two steps straight over p/c, without improving the base once first. */
function straight(problem: TracingProblem): number {
  const compiled = compileProblem(problem);
  const start = startOf(compiled);
  const space = stateSpaceOf(compiled, start);
  const effort = new Effort();
  const lookAhead = new LookAhead(compiled, ratioBase(compiled, space, effort), { depth: 2, space });
  const chooser = { choose: (state: PlanState) => lookAhead.choose(state), mayStop: true };
  return writeOut({ compiled, start, chooser, strides: space.strides, cut: 0, method: 'rollout', effort }).minutes;
}

function gapsOf(name: string, mix: Mix, count: number): Figure[] {
  const gaps: Record<Method, number[]> = { easiest: [], ratio: [], 'rollout-1': [], rollout: [], exact: [] };
  const straightGaps: number[] = [];
  let worseThanBase = 0;
  for (let seed = 1; seed <= count; seed++) {
    const problem = randomProblem(seed, mix);
    const minutes = Object.fromEntries(METHODS.map((method) => [method, solve(problem, method).expectedMinutes]));
    const exact = minutes.exact ?? Number.NaN;
    for (const method of METHODS) gaps[method].push((100 * ((minutes[method] ?? Number.NaN) - exact)) / exact);
    straightGaps.push((100 * (straight(read(problem)) - exact)) / exact);
    const base = (minutes.ratio ?? Number.NaN) * (1 + 1e-12);
    if (!((minutes.rollout ?? Infinity) <= base && (minutes['rollout-1'] ?? Infinity) <= base)) worseThanBase++;
  }
  const three = (of: readonly number[]): string =>
    `${mean(of).toFixed(3)} / ${quantile(of, 0.99).toFixed(2)} / ${Math.max(...of).toFixed(2)} %`;
  return [
    shown(`${name}: problems`, `${count}`),
    atMost(`${name}: two steps, mean gap`, mean(gaps.rollout), 0.05, ' %'),
    atMost(`${name}: two steps, 99 of 100`, quantile(gaps.rollout, 0.99), 1, ' %'),
    atMost(`${name}: two steps, worst`, Math.max(...gaps.rollout), 4, ' %'),
    shown(`${name}: two steps straight over ratio, mean / 99 of 100 / worst`, three(straightGaps)),
    shown(`${name}: one step, mean / 99 of 100 / worst`, three(gaps['rollout-1'])),
    shown(`${name}: ratio, mean / 99 of 100 / worst`, three(gaps.ratio)),
    shown(`${name}: easiest, mean / 99 of 100 / worst`, three(gaps.easiest)),
    atMost(`${name}: problems where looking ahead is worse than ratio`, worseThanBase, 0, '', 0),
  ];
}
