import { createHash } from 'node:crypto';
import { contentHashesIn, type Pictures, photographsIn } from '../../../../core/commands/kernel/contentHashes.ts';
import type { OpenShop } from '../../../../db/index.ts';
import { takeBlob } from './takeBlob.ts';

/** What is signed for with a command's input: the pictures of its photographs, opened and hashed; none where nothing is signed. */
export async function picturesSigned(shop: Pick<OpenShop, 'blobs'>, input: unknown): Promise<Pictures> {
  const pictures = new Map<string, string>();
  if (contentHashesIn(input).length === 0) return pictures;
  for (const name of photographsIn(input)) {
    const picture = await takeBlob(shop, name);
    if (picture) pictures.set(name, createHash('sha256').update(picture).digest('hex'));
  }
  return pictures;
}
