import { assemblyOf, movesBefore } from '../assembly.ts';
import { knownStep } from '../model/special.ts';
import type { FaultModel, StateId, TracingCase } from '../types.ts';

/** Assembly states that the log leaves open. */
export function openStates(model: FaultModel, tracing: TracingCase): readonly StateId[] {
  const assembly = assemblyOf(model, tracing.switches);
  return tracing.log.reduce<readonly StateId[]>((open, entry) => {
    const step = entry.struck ? undefined : knownStep(model, entry.step);
    return step ? movesBefore(assembly, open, step).open : open;
  }, []);
}
