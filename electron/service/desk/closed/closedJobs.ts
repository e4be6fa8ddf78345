import type { Job } from '../../../../core/job/job.ts';
import { SWITCHES } from '../../../../core/tracing/live/model/assemblyStates.ts';
import type { Switch } from '../../../../core/tracing/live/types.ts';
import { endedJobs, type Reader } from '../../../../db/index.ts';

/** A job that went home, with what was asked of its machine at the first look. */
export type ClosedJob = { readonly job: Job; readonly switches: readonly Switch[] };

/** As many of the newest as are looked at: about a year's of a small shop, so that people and parts are today's. Common practice, no source. */
export const NEWEST = 500;

/** The newest jobs that went home, the oldest of them first. */
export async function closedJobs(read: Reader): Promise<readonly ClosedJob[]> {
  const closed: ClosedJob[] = [];
  for (const id of (await endedJobs(read)).slice(-NEWEST)) {
    const job = await read.load('job', id);
    // What was taken in by mistake says nothing of the shop's work.
    if (!job || job.cancelled) continue;
    const machine = await read.load('machine', job.machine);
    closed.push({ job, switches: SWITCHES.filter((name) => machine?.switches[name] === true) });
  }
  return closed;
}
