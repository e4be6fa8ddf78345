import type { FaultModel, TracingCase } from '../tracing/live/types.ts';
import { benchTraces } from './benchTraces.ts';
import { openDecisions } from './decisions.ts';
import { planTraces } from './planTraces.ts';
import type { Traces } from './traced.ts';
import type { EstimatePolicy } from './types.ts';

/** Opens the tracing of a case for runs under a policy; null when nothing is left to trace, or never was anything. */
export function openTraces(model: FaultModel, given: TracingCase | null, policy: EstimatePolicy): Traces | null {
  if (policy === 'two-step') return benchTraces(model, given);
  const decisions = openDecisions(model, given, policy);
  return decisions && planTraces(model, decisions);
}
