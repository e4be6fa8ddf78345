import type { Job } from '../../../../core/job/job.ts';
import { type Outlook, outlooks } from '../../../../core/job/promise/turns.ts';
import type { Shop } from '../../../../core/job/shop.ts';
import type { LabourEstimate } from '../../../../core/labour/types.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { openJobs, type Reader } from '../../../../db/index.ts';
import { byOwnLeads } from '../closed/leadTimes.ts';

/** When each open job will be ready, as the shop's queue stands now; `fresh`: one not taken in yet, the last in it. */
export async function queueOutlook(
  read: Reader,
  { settings, staff }: Shop,
  at: EpochMs,
  fresh: LabourEstimate['handsOn'] | null = null,
): Promise<ReadonlyMap<string, Outlook>> {
  if (!settings) return new Map();
  const jobs: Job[] = [];
  for (const id of await openJobs(read)) {
    const job = await read.load('job', id);
    if (job) jobs.push(job);
  }
  return outlooks(jobs, { settings: await byOwnLeads(read, settings), staff }, at, fresh);
}
