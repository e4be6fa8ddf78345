import { isOpen } from '../../../../core/approval/question.ts';
import type { DayPoint } from '../../../../core/contract/screens.ts';
import type { View } from '../../../../core/entries/view.ts';
import { nextTry, triesInVain } from '../../../../core/job/approval/nextTry.ts';
import type { Job } from '../../../../core/job/job.ts';
import { bandOf } from '../../../../core/job/promise/band.ts';
import { phoneSentence } from '../../../../core/job/promise/phoneSentence.ts';
import { LATE_FROM, type Outlook, outlooks } from '../../../../core/job/promise/turns.ts';
import { noShop } from '../../../../core/job/shop.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { openJobs, type Reader } from '../../../../db/index.ts';
import { byOwnLeads } from '../closed/leadTimes.ts';
import { loadView } from '../loadView.ts';

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
      tryNow: settings ? tryNow(job, settings.rules.triesBeforeHome, at) : null,
      phone: phoneSentence(job, own, at),
    });
  }
  return points;
}

/** Is the owner to be tried now, for the question that waits longest? */
function tryNow(job: Job, of: number, at: EpochMs): DayPoint['tryNow'] {
  const question = job.questions.find(isOpen);
  if (!question) return null;
  const due = nextTry(question, of);
  if (due === null || at > question.validUntil) return { n: null, of };
  return due <= at ? { n: triesInVain(question) + 1, of } : null;
}
