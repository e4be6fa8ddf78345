import type { Base } from '../orders/base.ts';
import { RememberedBase } from '../orders/rememberedBase.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { Effort } from '../problem/effort.ts';
import type { PlanState } from '../states/planState.ts';
import type { StateSpace } from '../states/stateSpace.ts';
import { LookAhead } from './lookAhead.ts';

/**
 * A base improved once: in every state the step with the best one-step value over it (rollout over rollout,
 * Bertsekas & Tsitsiklis 1996, section 6.1). It asks questions, which p/c alone never does. Nowhere worse than its
 * base, so neither is what looks ahead over it. For state spaces small enough to remember.
 */
export function improvedBase(compiled: CompiledProblem, base: Base, space: StateSpace, effort: Effort): RememberedBase {
  const lookAhead = new LookAhead(compiled, base, { depth: 1, space });
  const first = (state: PlanState): number => lookAhead.choose(state);
  return new RememberedBase(compiled, space, effort, { first, work: 2 * compiled.faultCount * compiled.stepCount });
}
