import { deflateRawSync, inflateRawSync } from 'node:zlib';

/** Bytes deflated (RFC 1951) with a preset dictionary, as hard as deflate tries. */
export const deflated = (plain: Uint8Array, dictionary: Uint8Array): Buffer =>
  deflateRawSync(plain, { level: 9, dictionary });

/**
 * What `deflated` made, as it was.
 * @param most At most so many bytes.
 * @throws Where it is nothing that was deflated with this dictionary, or more than `most`.
 */
export const inflated = (packed: Uint8Array, dictionary: Uint8Array, most: number): Buffer =>
  inflateRawSync(packed, { dictionary, maxOutputLength: most });
