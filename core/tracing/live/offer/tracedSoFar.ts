import type { Posterior } from '../belief/posterior.ts';
import type { EngineVerdict, Fault, FaultModel, StateId, Suspect, TracingCase } from '../types.ts';

/** Where the tracing is: the case, what is believed and may be said of it, and what stands open. */
export type TracedSoFar = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly posterior: Posterior;
  readonly suspects: readonly Suspect[];
  readonly verdict: EngineVerdict;
  readonly open: readonly StateId[];
};

const ENDING: readonly EngineVerdict['verdict'][] = ['confirmed', 'cured', 'not-reproduced'];

/** Does this verdict end the tracing: confirmed, cured, or nothing shown? */
export const endsTracing = ({ verdict }: EngineVerdict): boolean => ENDING.includes(verdict);

/** The part that was only named so far; null where none was. */
export const namedPart = ({ verdict }: TracedSoFar): Fault['part'] | null =>
  verdict.verdict === 'named' ? verdict.part : null;
