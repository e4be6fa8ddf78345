import type { Computing, JobSheet } from '../../../../core/contract/screens.ts';
import type { JobId } from '../../../../core/ids.ts';
import { canGoHome } from '../../../../core/job/home/canGoHome.ts';
import { charges } from '../../../../core/job/money/charges.ts';
import { bandOf } from '../../../../core/job/promise/band.ts';
import { phoneSentence } from '../../../../core/job/promise/phoneSentence.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { Reader } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { queueOutlook } from './outlook.ts';

/** Everything the Counter and the Bench show of one job; null when there is no such job. */
export async function jobSheet(
  read: Reader,
  job: JobId,
  at: EpochMs,
  computing: Computing | null = null,
): Promise<JobSheet | null> {
  const view = await loadView(read, { job }, at);
  if (!view.job || !view.owner || !view.machine) return null;
  const outlook = (await queueOutlook(read, view.shop, at)).get(job) ?? null;
  const asItCame = view.job.stages.some((one) => one.stage === 'home-as-it-came');
  return {
    seq: read.head,
    job: view.job,
    owner: view.owner,
    machine: view.machine,
    parts: [...view.parts.values()],
    rigs: [...view.rigs.values()],
    charges: charges(view.job, asItCame),
    missing: canGoHome(view.job, view.machine, view.parts),
    phone: phoneSentence(view.job, outlook, at),
    band: bandOf(view.job),
    outlook,
    computing,
  };
}
