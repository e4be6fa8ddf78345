import type { DayPoint } from '../../../core/contract/screens.ts';
import type { JobId } from '../../../core/ids.ts';
import { bandOf } from '../../../core/job/band.ts';
import { phoneSentence } from '../../../core/job/phoneSentence.ts';
import type { EpochMs } from '../../../core/time.ts';
import type { Reader } from '../../../db/index.ts';
import { loadView } from './loadView.ts';

/** Every job that has not ended, with whose move it is, its promise, and what the desk may say. */
export async function dayLine(read: Reader, at: EpochMs): Promise<readonly DayPoint[]> {
  const rows = await read.rows((tables) =>
    tables.selectFrom('job_now').where('stage', '!=', 'gone-home').orderBy('taken_in').select('job').execute(),
  );
  const points: DayPoint[] = [];
  for (const row of rows) {
    const { job, machine, owner } = await loadView(read, { job: row.job as JobId }, at);
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
