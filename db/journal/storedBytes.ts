import { deflated, inflated } from '../packing/deflated.ts';
import { DICTIONARIES } from '../packing/dictionaries.ts';

/**
 * The first byte of an entry that was deflated with the first dictionary. One that lies as it is begins with its brace, as
 * do all from before.
 */
const DEFLATED_1 = 1;

/** The longest entry that is unpacked, in bytes: far more than the largest paper or report. Common practice, no source. */
const MOST_BYTES = 16 * 1024 * 1024;

/** An entry's bytes as they are stored and hashed: packed, where that makes them shorter. */
export function toBeStored(bytes: Uint8Array): Buffer {
  const packed = Buffer.concat([Buffer.of(DEFLATED_1), deflated(bytes, DICTIONARIES.entries1)]);
  return packed.length < bytes.length && bytes.length <= MOST_BYTES ? packed : Buffer.from(bytes);
}

/**
 * The text of stored bytes.
 * @throws Where they are packed, and not as `toBeStored` packs.
 */
export function textOfStored(bytes: Uint8Array): string {
  const plain = bytes[0] === DEFLATED_1 ? inflated(bytes.subarray(1), DICTIONARIES.entries1, MOST_BYTES) : bytes;
  return Buffer.from(plain).toString('utf8');
}

/** Names of files that stand in stored bytes, each once: none where those cannot be unpacked. */
export function blobsIn(bytes: Uint8Array): ReadonlySet<string> {
  try {
    return new Set(textOfStored(bytes).match(/blob:[0-9a-f]{64}/g));
  } catch {
    return new Set();
  }
}
