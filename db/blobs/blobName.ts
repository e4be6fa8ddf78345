import type { Brand } from '../../core/brand.ts';

/** `blob:` and the SHA-256 of the sealed bytes in hex. Entries name a blob by this text, outside any personal field. */
export type BlobName = Brand<string, 'BlobName'>;

export const blobNameOf = (hash: Uint8Array): BlobName => `blob:${Buffer.from(hash).toString('hex')}` as BlobName;
export const isBlobName = (text: string): text is BlobName => /^blob:[0-9a-f]{64}$/.test(text);
