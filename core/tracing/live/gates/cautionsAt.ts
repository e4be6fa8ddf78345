import { assemblyOf, opensOf } from '../assembly.ts';
import type { Caution, FaultModel, Step, TracingCase } from '../types.ts';

/** All the cautions at a step on this machine, however it is begun: its own, and those of what must be opened for it. */
export function cautionsAt(
  model: FaultModel,
  { switches }: Pick<TracingCase, 'switches'>,
  step: Step,
): readonly Caution[] {
  const assembly = assemblyOf(model, switches);
  const opened = opensOf(assembly, step).flatMap((state) => assembly.cautions.get(state) ?? []);
  return [...new Set([...step.cautions, ...opened])];
}
