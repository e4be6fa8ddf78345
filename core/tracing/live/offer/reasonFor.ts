import { suspectsOf } from '../belief/belief.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { knownStep } from '../model/special.ts';
import { toProblem } from '../problem/toProblem.ts';
import type { FaultModel, StepId, StepView, TracingCase } from '../types.ts';
import { openStates } from './openStates.ts';
import { sceneOf, seeStep } from './seeStep.ts';

/** The same view of any step the technician points at; null when the model does not know it. */
export function reasonFor(model: FaultModel, tracing: TracingCase, id: StepId): StepView | null {
  const step = knownStep(model, id);
  if (!step) return null;
  const posterior = posteriorOf(model, tracing);
  const live = toProblem(model, tracing, posterior, { steps: [step] });
  const open = openStates(model, tracing);
  return seeStep(sceneOf({ model, tracing, live, open, suspects: suspectsOf(model, posterior) }), 0);
}
