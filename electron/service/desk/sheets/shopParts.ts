import type { Part } from '../../../../core/custody/ledger.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { type Reader, shopPartsHere } from '../../../../db/index.ts';
import { loadParts } from '../loadView.ts';

/** Every part of the shop's, wherever it is now; gone ones left out. */
export async function shopParts(read: Reader, at: EpochMs): Promise<readonly Part[]> {
  const parts = await loadParts(read, await shopPartsHere(read), at);
  return [...parts.values()].filter((part) => part.belongs.to === 'shop');
}
