import { agreed } from '../../../../core/approval/consent.ts';
import type { JobId, OwnerId } from '../../../../core/ids.ts';
import type { Refusal } from '../../../../core/refusal.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { checkPhotograph, type OpenShop } from '../../../../db/index.ts';
import { storeBlob, storeForJob } from './storeBlob.ts';
import { takeBlob } from './takeBlob.ts';

/** Stores a photograph for a job, sealed under its owner's key; checked again here, whatever the page did to it. */
export const storePhotograph = (shop: OpenShop, job: JobId, bytes: Uint8Array, at: EpochMs) =>
  storeForJob(shop, job, { bytes, purpose: 'photographs', at }, ({ consents }) =>
    agreed(consents, 'photos') ? checkPhotograph(bytes) : { refused: 'consent-missing' },
  );

/** Keeps a photograph of a sheet that is still being written, as drafts are: sealed, and swept after a day unless it is signed for. */
export async function holdPhotograph(shop: OpenShop, bytes: Uint8Array): Promise<{ readonly blob: string } | Refusal> {
  const problem = checkPhotograph(bytes);
  if (problem) return problem;
  return storeBlob(shop, bytes, { of: 'drafts', purpose: 'record' });
}

/**
 * Seals a held photograph under the owner's key before the sheet is signed: signing it refuses photographs without their
 * yes, and what no entry names is swept after a day.
 */
export async function keepHeldPhotograph(
  shop: OpenShop,
  owner: OwnerId,
  held: string,
): Promise<{ readonly blob: string } | Refusal> {
  const bytes = await takeBlob(shop, held);
  if (!bytes) return { refused: 'photograph-missing' };
  return storeBlob(shop, bytes, { of: owner, purpose: 'photographs' });
}
