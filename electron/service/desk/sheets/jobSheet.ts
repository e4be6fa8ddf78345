import { unknownOwner } from '../../../../core/approval/owner.ts';
import type { Computing, JobSheet } from '../../../../core/contract/screens.ts';
import { type Machine, newMachine } from '../../../../core/custody/machine.ts';
import type { JobId } from '../../../../core/ids.ts';
import { canGoHome } from '../../../../core/job/home/canGoHome.ts';
import type { Job } from '../../../../core/job/job.ts';
import { charges } from '../../../../core/job/money/charges.ts';
import { bandOf } from '../../../../core/job/promise/band.ts';
import { phoneSentence } from '../../../../core/job/promise/phoneSentence.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { Reader } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { asFarAsReadable, unreadableIn } from '../setApart.ts';
import { queueOutlook } from './outlook.ts';

/**
 * Everything the Counter and the Bench show of one job, as far as it can be read; null when there is no such job, or its
 * beginning cannot be read.
 */
export async function jobSheet(
  read: Reader,
  job: JobId,
  at: EpochMs,
  computing: Computing | null = null,
): Promise<JobSheet | null> {
  const view = await loadView(asFarAsReadable(read), { job }, at);
  if (!view.job) return null;
  const owner = view.owner ?? unknownOwner(view.job.owner);
  const machine =
    view.machine ??
    newMachine({ id: view.job.machine, owner: view.job.owner, tag: view.job.tag, called: '', serial: null });
  const outlook = (await queueOutlook(read, view.shop, at)).get(job) ?? null;
  const asItCame = view.job.stages.some((one) => one.stage === 'home-as-it-came');
  return {
    seq: read.head,
    job: view.job,
    owner,
    machine,
    parts: [...view.parts.values()],
    rigs: [...view.rigs.values()],
    charges: charges(view.job, asItCame),
    missing: canGoHome(view.job, machine, view.parts),
    phone: phoneSentence(view.job, outlook, at),
    band: bandOf(view.job),
    outlook,
    unreadable: unreadableIn(read, ownStreams(view.job, machine)),
    computing,
  };
}

/** The streams that a job's sheet is made of. */
const ownStreams = (job: Job, machine: Machine): ReadonlySet<string> =>
  new Set([
    `job:${job.id}`,
    `owner:${job.owner}`,
    `machine:${job.machine}`,
    ...[...job.parts, ...machine.parts].map((id) => `part:${id}`),
  ]);
