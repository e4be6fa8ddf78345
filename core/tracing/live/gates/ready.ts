import type { FaultModel, StateId, Step, StepId, Suspect, TracingCase } from '../types.ts';
import { timesDone } from './gates.ts';

/** What the first moves are chosen from: the steps that can be done, what is believed, and what stands open. */
export type Ready = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly steps: readonly Step[];
  readonly suspects: readonly Suspect[];
  readonly open: readonly StateId[];
};

/** This step, where it can be done and was not yet. */
export const undone = ({ model, tracing, steps }: Ready, id: StepId): StepId | null =>
  steps.some((step) => step.id === id && timesDone(model, tracing, step) === 0) ? id : null;
