import type { DayPoint } from '../../../core/contract/screens.ts';
import { bandOf } from '../../../core/job/band.ts';
import { phoneSentence } from '../../../core/job/phoneSentence.ts';
import type { EpochMs } from '../../../core/time.ts';
import { openJobs, type Reader } from '../../../db/index.ts';
import { loadView } from './loadView.ts';

/** Every job that has not ended, with whose move it is, its promise, and what the desk may say. */
export async function dayLine(read: Reader, at: EpochMs): Promise<readonly DayPoint[]> {
  const points: DayPoint[] = [];
  for (const id of await openJobs(read)) {
    const { job, machine, owner } = await loadView(read, { job: id }, at);
    if (!job || !machine) continue;
    const promised = job.promised?.at ?? job.deadline;
    points.push({
      job: job.id,
      called: owner?.name.value ?? machine.called,
      tag: machine.tag,
      stage: job.stage,
      band: bandOf(job),
      promised,
      p90: job.promised?.p90 ?? null,
      late: promised !== null && promised < at && bandOf(job) !== 'ready',
      willBeLate: job.promised !== null && job.promised.p90 > job.promised.at,
      waitsFor: null,
      phone: phoneSentence(job),
    });
  }
  return points;
}
