import { type Brand, brand } from '../../core/brand.ts';

/** `blob:` and the SHA-256 of the sealed bytes in hex. Entries name a blob by this text, outside any personal field. */
export type BlobName = Brand<string, 'BlobName'>;
const named = brand<BlobName>();

/** The name of a blob by the SHA-256 of its sealed bytes: 32 bytes. */
export const blobNameOf = (hash: Uint8Array): BlobName => named(`blob:${Buffer.from(hash).toString('hex')}`);

export const isBlobName = (text: string): text is BlobName => /^blob:[0-9a-f]{64}$/.test(text);
