import { brotliCompressSync, brotliDecompressSync, constants } from 'node:zlib';

/** From here on packing saves more than its mark costs; short texts grow by it. */
const WORTH_PACKING = 256;

/** The longest value that is unpacked, in bytes: far above the longest that any command writes. */
const LONGEST_UNPACKED = 64 * 1024 * 1024;

/**
 * How hard brotli tries. On the papers of a whole job (105 kB): 4 leaves 44.1 kB, 6 leaves 42.3, 9 the same in 16 times
 * the time, 11 leaves 36.7 at 6 ms a paper, too long inside a write.
 */
const QUALITY = 6;

/** Bytes packed (brotli, RFC 7932); null where that makes nothing shorter. Text that reads alike packs best. */
export function pack(plain: Uint8Array): Buffer | null {
  if (plain.length < WORTH_PACKING) return null;
  const packed = brotliCompressSync(plain, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: QUALITY,
      [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
      [constants.BROTLI_PARAM_SIZE_HINT]: plain.length,
    },
  });
  return packed.length < plain.length ? packed : null;
}

/** What `pack` made, as it was; null for bytes that it did not make. */
export function unpack(packed: Uint8Array): Buffer | null {
  try {
    return brotliDecompressSync(packed, { maxOutputLength: LONGEST_UNPACKED });
  } catch {
    return null;
  }
}
