import type { DayPoint } from '../../../core/contract/screens.ts';
import { bandOf } from '../../../core/job/band.ts';
import { phoneSentence } from '../../../core/job/phoneSentence.ts';
import { LATE_FROM, type Outlook, outlooks } from '../../../core/job/promise/turns.ts';
import { noShop } from '../../../core/job/shop.ts';
import type { View } from '../../../core/job/view.ts';
import type { EpochMs } from '../../../core/time.ts';
import { openJobs, type Reader } from '../../../db/index.ts';
import { byOwnLeads } from './leadTimes.ts';
import { loadView } from './loadView.ts';

/** Every job that has not ended, with whose move it is, its promise, and what the desk may say. */
export async function dayLine(read: Reader, at: EpochMs): Promise<readonly DayPoint[]> {
  const views: View[] = [];
  for (const id of await openJobs(read)) views.push(await loadView(read, { job: id }, at));
  const jobs = views.flatMap(({ job }) => job ?? []);
  const { settings, staff } = views[0]?.shop ?? noShop;
  const outlook = settings
    ? outlooks(jobs, { settings: await byOwnLeads(read, settings), staff }, at)
    : new Map<string, Outlook>();
  const points: DayPoint[] = [];
  for (const { job, machine, owner } of views) {
    if (!job || !machine) continue;
    const own = outlook.get(job.id) ?? null;
    const promised = job.promised?.at ?? job.deadline;
    points.push({
      job: job.id,
      called: owner?.name.value ?? machine.called,
      tag: machine.tag,
      stage: job.stage,
      band: bandOf(job),
      promised,
      p90: own?.p90 ?? null,
      likely: own?.day ?? null,
      late: promised !== null && promised < at && bandOf(job) !== 'ready',
      willBeLate: (own?.lateChance ?? 0) > LATE_FROM,
      waitsFor: null,
      phone: phoneSentence(job, own, at),
    });
  }
  return points;
}
