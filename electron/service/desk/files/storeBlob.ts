import type { Refusal } from '../../../../core/refusal.ts';
import type { Shop } from '../../../../db/index.ts';

/** Keeps a file sealed under a key; answers the name it is kept under, or why it was not kept. */
export async function storeBlob(
  shop: Shop,
  bytes: Uint8Array,
  sealed: Parameters<Shop['blobs']['put']>[1],
): Promise<{ readonly blob: string } | Refusal> {
  const stored = await shop.blobs.put(bytes, sealed);
  return typeof stored === 'string' ? { blob: stored } : stored;
}
