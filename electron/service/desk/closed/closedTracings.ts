import { closedTracing } from '../../../../core/job/bench/closedTracing.ts';
import { type PriorTally, tallyJobs } from '../../../../core/tracing/live/shop/closedTracing.ts';
import type { FaultModel } from '../../../../core/tracing/live/types.ts';
import { endedJobs, type Reader } from '../../../../db/index.ts';

/** What all jobs that went home say together of how often each fault is met. */
export async function tallyOf(read: Reader, model: FaultModel): Promise<PriorTally> {
  const closed = [];
  for (const id of await endedJobs(read)) {
    const job = await read.load('job', id);
    const one = job && !job.cancelled && closedTracing(model, job);
    if (one) closed.push(one);
  }
  return tallyJobs(model, closed);
}
