import { canonicalJson } from './canonicalJson.ts';
import type { Entry, Json } from './entry.ts';

/** SHA-256 of some bytes: 32 bytes. Handed in: core hashes nothing by itself. */
export type Sha256 = (bytes: Uint8Array) => Uint8Array;

/** What stands before the first entry of a branch: 32 zero bytes. */
export const CHAIN_START: Uint8Array = new Uint8Array(32);

const FIELDS = ['branch', 'seq', 'stream', 'streamSeq', 'at', 'by', 'device', 'command', 'kind', 'v', 'body'] as const;

/**
 * The bytes of an entry: the canonical JSON of everything but the hashes, as UTF-8. They are stored, packed or as they are,
 * and what is stored is hashed.
 * Personal fields must have been sealed before.
 */
export function entryBytes(entry: Entry<string, Json>): Uint8Array {
  const fields = Object.fromEntries(FIELDS.map((name) => [name, entry[name]]));
  return new TextEncoder().encode(canonicalJson(fields));
}

/** The hash that chains an entry to the one before it: SHA-256(prevHash followed by the stored bytes). */
export function chainHash(prevHash: Uint8Array, storedBytes: Uint8Array, sha256: Sha256): Uint8Array {
  const both = new Uint8Array(prevHash.length + storedBytes.length);
  both.set(prevHash);
  both.set(storedBytes, prevHash.length);
  return sha256(both);
}

/** One stored entry as the chain sees it. */
export type Link = {
  readonly seq: number;
  readonly prevHash: Uint8Array;
  readonly hash: Uint8Array;
  readonly bytes: Uint8Array;
};

/** What is wrong with a link: its number, its link to the one before, or its own bytes. */
export type BrokenLink = 'seq-not-next' | 'not-linked-to-the-one-before' | 'bytes-do-not-fit-hash';

/**
 * Checks one link against the one before it.
 * @param before The link before; null for the first of a branch.
 * @returns What is wrong, or null.
 */
export function checkLink(before: Link | null, link: Link, sha256: Sha256): BrokenLink | null {
  if (link.seq !== (before?.seq ?? 0) + 1) return 'seq-not-next';
  if (!sameBytes(link.prevHash, before?.hash ?? CHAIN_START)) return 'not-linked-to-the-one-before';
  if (!sameBytes(link.hash, chainHash(link.prevHash, link.bytes, sha256))) return 'bytes-do-not-fit-hash';
  return null;
}

/** Are two byte strings the same? Not for secrets: it stops at the first difference. */
export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
