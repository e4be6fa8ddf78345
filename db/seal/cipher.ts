import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto';

const NONCE_BYTES = 12;
const TAG_BYTES = 16;
export const KEY_BYTES = 32;

/**
 * Seals bytes under a key: AES-256-GCM with a random nonce; `about` is bound to them but not hidden.
 * Shape: nonce (12 bytes), tag (16), ciphertext. Source: NIST SP 800-38D, 96-bit random nonce.
 */
export function seal(key: Uint8Array, plain: Uint8Array, about: string): Buffer {
  const nonce = randomBytes(NONCE_BYTES);
  const cipher = createCipheriv('aes-256-gcm', key, nonce);
  cipher.setAAD(Buffer.from(about, 'utf8'));
  const hidden = Buffer.concat([cipher.update(plain), cipher.final()]);
  return Buffer.concat([nonce, cipher.getAuthTag(), hidden]);
}

/** Opens what `seal` made; null when the key, the bytes or what they are about is another. */
export function unseal(key: Uint8Array, sealed: Uint8Array, about: string): Buffer | null {
  if (sealed.length < NONCE_BYTES + TAG_BYTES) return null;
  const decipher = createDecipheriv('aes-256-gcm', key, sealed.subarray(0, NONCE_BYTES), { authTagLength: TAG_BYTES });
  decipher.setAAD(Buffer.from(about, 'utf8'));
  decipher.setAuthTag(sealed.subarray(NONCE_BYTES, NONCE_BYTES + TAG_BYTES));
  try {
    return Buffer.concat([decipher.update(sealed.subarray(NONCE_BYTES + TAG_BYTES)), decipher.final()]);
  } catch {
    return null;
  }
}

/** A fresh key. */
export const freshKey = (): Buffer => randomBytes(KEY_BYTES);

/** A key for one use, derived from the shop's key (HKDF with SHA-256, RFC 5869). */
export function deriveKey(shopKey: Uint8Array, use: string): Buffer {
  return Buffer.from(hkdfSync('sha256', shopKey, new Uint8Array(0), `knowngood/${use}/1`, KEY_BYTES));
}
