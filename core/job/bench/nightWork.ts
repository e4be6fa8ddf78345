import { suspectsOf } from '../../tracing/live/belief/belief.ts';
import { posteriorOf } from '../../tracing/live/belief/posterior.ts';
import { whyNotOffered } from '../../tracing/live/gates/available.ts';
import type { FaultModel, TracingCase } from '../../tracing/live/types.ts';
import type { Job } from '../job.ts';
import { isUnderWay } from '../work.ts';

/** A pass that likely takes longer than this is worth a night: common practice, no source. */
const LONG_MINUTES = 180;
/** Proofs that run on their own for as long as one lets them. */
const LONG_PROOFS = ['memory-pass', 'processor-load', 'card-load'] as const;

/**
 * What could run on a machine over the night without anybody's hands: at proving, the long proofs it has not passed; at
 * tracing, the long steps that could be taken now. Nothing where something runs already, or where nobody may power it.
 */
export function nightWork(job: Job, model: FaultModel, tracing: TracingCase): readonly string[] {
  const runs = job.work.some((work) => isUnderWay(work));
  if (runs || (job.left !== null && job.left.doNotPower !== null)) return [];
  if (job.stage === 'proving') {
    const passed = new Set(job.work.filter((work) => work.passed && !work.struck).map((work) => work.what));
    return LONG_PROOFS.filter((proof) => !passed.has(proof));
  }
  if (job.stage !== 'tracing') return [];
  const long = model.steps.filter((step) => step.waiting >= LONG_MINUTES);
  const suspects = suspectsOf(model, posteriorOf(model, tracing, false));
  return long.filter((step) => whyNotOffered(model, tracing, step, suspects) === null).map((step) => step.id);
}
