import type { Prng } from '../../../../core/figures/prng.ts';
import { stepMinutes } from '../../../../core/labour/traced.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { verdictAfter } from '../../../../core/tracing/live/verdict/verdictAfter.ts';
import { oncePerHistory } from '../live/history.ts';
import { offered, type Policy } from '../live/policies.ts';
import { type Bench, HANDED_OVER, runMachine } from '../live/runMachine.ts';
import type { SimulatedMachine } from '../live/simulatedMachine.ts';

/** A bench that goes by the engine's own offers, looking two steps ahead; each history of one start is decided once. */
export function benchByTheEngine(model: FaultModel): Bench {
  const policy: Policy = oncePerHistory(offered(model, 'rollout'));
  return { policy, confirm: policy, verdict: oncePerHistory((tracing: TracingCase) => verdictAfter(model, tracing)) };
}

/**
 * Hands-on minutes from here until the fault is found and put right: the steps as long as hands are, and the mending of
 * what the verdict found. Where a sweep worked nothing is left to mend; what is handed over ends there.
 */
export function minutesToMended(
  model: FaultModel,
  from: TracingCase,
  machine: SimulatedMachine,
  bench: Bench,
  hands: Prng,
): number {
  const run = runMachine(model, from, machine, bench, (step) => stepMinutes(step, {}, hands));
  const mend = model.faults[model.faultIndex.get(run.found ?? '') ?? -1]?.mendMinutes ?? 0;
  return run.minutes - (run.verdict === 'tracing' ? HANDED_OVER : 0) + mend;
}
