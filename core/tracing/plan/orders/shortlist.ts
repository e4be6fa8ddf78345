import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { PlanState } from '../states/planState.ts';
import { bestByRatio } from './bestByRatio.ts';
import type { RatioSums } from './ratioSums.ts';

/** So many steps are looked into at each level, the ones with the best one-step value. */
export const MOST_CANDIDATES = 16;

/**
 * The steps, by their place in the problem, worth looking into once an outcome is known: half the best by what was seen before it, half the best by p/c
 * now. `ranked`: all steps, the best first, as they were seen before the outcome. Writes into `sums`.
 */
export function shortlist(
  compiled: CompiledProblem,
  ranked: readonly number[],
  state: PlanState,
  sums: RatioSums,
  most = MOST_CANDIDATES,
): readonly number[] {
  const left = ranked.filter((s) => state.done[s] === 0);
  if (left.length <= most) return left;
  const short = left.slice(0, most / 2);
  return [...short, ...bestByRatio(compiled, state, sums.of(state.belief), most - short.length, short)];
}
