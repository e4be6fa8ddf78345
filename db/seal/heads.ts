import { timingSafeEqual } from 'node:crypto';
import type { EpochMs } from '../../core/time.ts';
import type { HeadRow, KeyFile } from './keyFile.ts';
import { keyedDigest } from './shopKeys.ts';

/** A chain head sealed under the shop's key. `short` is for papers: the entry's number and the first 80 bits of its hash. */
export type SealedHead = {
  readonly branch: string;
  readonly seq: number;
  readonly at: EpochMs;
  readonly short: string;
};

/** Seals a head into the key file. */
export function sealHead(keyFile: KeyFile, headKey: Uint8Array, head: Omit<HeadRow, 'mac'>): SealedHead {
  keyFile.addHead({ ...head, mac: macOf(headKey, head) });
  return readHead(head);
}

/** Was this head sealed under the shop's key as it stands? */
export function headIsGenuine(headKey: Uint8Array, head: HeadRow): boolean {
  const mac = macOf(headKey, head);
  return mac.length === head.mac.length && timingSafeEqual(mac, head.mac);
}

export const readHead = ({ branch, seq, at, hash }: Omit<HeadRow, 'mac'>): SealedHead => ({
  branch,
  seq,
  at,
  short: shortHead(seq, hash),
});

/** Letters and digits without I, L, O and U, which are misread or read as words (Crockford's base 32). */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const SHORT_BITS = 80;

/** A head as printed: `1042-K7R4-TMXQ-2B9D-HH3A`. */
export function shortHead(seq: number, hash: Uint8Array): string {
  const bits = BigInt(`0x${Buffer.from(hash).toString('hex')}`) >> BigInt(hash.length * 8 - SHORT_BITS);
  const letters = Array.from(
    { length: SHORT_BITS / 5 },
    (_, index) => ALPHABET[Number((bits >> BigInt(SHORT_BITS - 5 * (index + 1))) & 31n)],
  );
  return `${seq}-${letters.join('').replace(/(.{4})(?=.)/g, '$1-')}`;
}

/** The entry number a printed head is about; null when the text is no head. */
export function seqOfShortHead(text: string): number | null {
  const [, seq] = /^([1-9]\d{0,14})(?:-[0-9A-HJKMNP-TV-Z]{4}){4}$/.exec(text.trim().toUpperCase()) ?? [];
  return seq === undefined ? null : Number(seq);
}

function macOf(headKey: Uint8Array, { branch, seq, hash, at }: Omit<HeadRow, 'mac'>): Buffer {
  return keyedDigest(headKey, [branch, seq, Buffer.from(hash).toString('hex'), at]);
}
