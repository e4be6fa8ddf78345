import { createHash } from 'node:crypto';

/** SHA-256 of some bytes (FIPS 180-4): 32 bytes. */
export const sha256 = (bytes: Uint8Array): Uint8Array => new Uint8Array(createHash('sha256').update(bytes).digest());
