import { createHmac } from 'node:crypto';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { deriveKey } from './cipher.ts';

/** The keys a service works with, each derived from the shop's key for one use. */
export type ShopKeys = {
  readonly wrapping: Uint8Array;
  /** Seals chain heads. */
  readonly heads: Uint8Array;
  /** Recognises a phone number, mail address or serial without storing it. */
  readonly search: Uint8Array;
  /** Recognises a command asked again. */
  readonly asked: Uint8Array;
  /** Sums up read tables. */
  readonly tables: Uint8Array;
};

export const shopKeysFrom = (shopKey: Uint8Array): ShopKeys => ({
  wrapping: deriveKey(shopKey, 'wrapping'),
  heads: deriveKey(shopKey, 'heads'),
  search: deriveKey(shopKey, 'search'),
  asked: deriveKey(shopKey, 'asked'),
  tables: deriveKey(shopKey, 'tables'),
});

/** HMAC with SHA-256 (RFC 2104, FIPS 198-1) over a value's canonical JSON: 32 bytes. */
export function keyedDigest(key: Uint8Array, value: unknown): Buffer {
  return createHmac('sha256', key).update(canonicalJson(value), 'utf8').digest();
}
