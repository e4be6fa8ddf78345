import { isBlobName, type OpenShop } from '../../../../db/index.ts';

/** What is kept under this name, a photograph or a letter; null when it is missing or its key was destroyed. */
export async function takeBlob(shop: Pick<OpenShop, 'blobs'>, blob: string): Promise<Uint8Array<ArrayBuffer> | null> {
  if (!isBlobName(blob)) return null;
  const bytes = await shop.blobs.get(blob);
  return bytes instanceof Uint8Array ? new Uint8Array(bytes) : null;
}
