import { randomBytes, timingSafeEqual } from 'node:crypto';
import { argon2idAsync } from '@noble/hashes/argon2.js';

/** What a hash costs: KiB of memory, passes, lanes. */
export type Cost = { readonly m: number; readonly t: number; readonly p: number };

/** The least that the OWASP Password Storage Cheat Sheet asks of argon2id: 19 MiB, two passes, one lane. */
export const USUAL_COST: Cost = { m: 19_456, t: 2, p: 1 };

const SALT_BYTES = 16;
const HASH_BYTES = 32;
const PHC = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$([A-Za-z0-9+/]+)\$([A-Za-z0-9+/]+)$/;

/** The argon2id hash of a PIN or of recovery words (RFC 9106) as a PHC string, which carries its cost and salt. Others go on meanwhile. */
export async function hashSecret(secret: string, { m, t, p }: Cost = USUAL_COST): Promise<string> {
  const salt = randomBytes(SALT_BYTES);
  const hash = await argon2idAsync(secret, salt, { m, t, p, dkLen: HASH_BYTES });
  return `$argon2id$v=19$m=${m},t=${t},p=${p}$${plain(salt)}$${plain(hash)}`;
}

/** Does a secret give this hash? False for text that is no such hash. Tells nothing by its time but the cost. */
export async function givesHash(secret: string, phc: string): Promise<boolean> {
  const [, m, t, p, salt = '', hash = ''] = PHC.exec(phc) ?? [];
  if (hash === '') return false;
  const wanted = Buffer.from(hash, 'base64');
  const cost = { m: Number(m), t: Number(t), p: Number(p), dkLen: wanted.length };
  return timingSafeEqual(await argon2idAsync(secret, Buffer.from(salt, 'base64'), cost), wanted);
}

/** Base64 without its filling, as PHC strings have it. */
const plain = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replaceAll('=', '');
