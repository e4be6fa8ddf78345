import type { JobId } from '../../../../core/ids.ts';
import type { Job } from '../../../../core/job/job.ts';
import type { Purpose } from '../../../../core/journal/personal.ts';
import type { Refusal } from '../../../../core/refusal.ts';
import type { EpochMs } from '../../../../core/time.ts';
import type { OpenShop } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { jobSetApart } from '../setApart.ts';

/** Keeps a file sealed under a key; answers the name it is kept under, or why it was not kept. */
export async function storeBlob(
  shop: OpenShop,
  bytes: Uint8Array,
  sealed: Parameters<OpenShop['blobs']['put']>[1],
): Promise<{ readonly blob: string } | Refusal> {
  const stored = await shop.blobs.put(bytes, sealed);
  return typeof stored === 'string' ? { blob: stored } : stored;
}

/**
 * Keeps a file of a job sealed under its owner's key; answers the name it is kept under, or why it was not kept.
 * @param problem What keeps it from being kept for this job, if anything does.
 */
export async function storeForJob(
  shop: OpenShop,
  job: JobId,
  file: { readonly bytes: Uint8Array; readonly purpose: Purpose; readonly at: EpochMs },
  problem: (job: Job) => Refusal | null,
): Promise<{ readonly blob: string } | Refusal> {
  const read = await shop.read();
  const { job: found } = await loadView(read, { job }, file.at);
  if (!found) return jobSetApart(read, job) ?? { refused: 'no-such-job' };
  return problem(found) ?? storeBlob(shop, file.bytes, { of: found.owner, purpose: file.purpose });
}
