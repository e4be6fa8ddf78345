import { at } from '../../../figures/rows.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { PlanState } from './planState.ts';

/** Minutes × mass charged for doing the step now, finishing included, opening and closing left out. */
export function chargeOf(compiled: CompiledProblem, { belief, mass }: PlanState, step: number): number {
  const cost = compiled.costRow[step];
  let charge = mass * at(compiled.minutes, step);
  if (cost) for (let f = 0; f < belief.length; f++) charge += (belief[f] ?? NaN) * (cost[f] ?? NaN);
  return charge;
}
