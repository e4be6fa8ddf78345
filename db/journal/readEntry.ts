import { chainHash, sameBytes } from '../../core/journal/chain.ts';
import type { Entry, Json } from '../../core/journal/entry.ts';
import type { JournalTable } from '../schema.ts';
import { openBody } from '../seal/sealedBody.ts';
import { sha256 } from '../seal/sha256.ts';
import { type Lifts, lift } from './lift.ts';
import { textOfStored } from './storedBytes.ts';

/** Gives a key by its name, or null when it was destroyed or may not be used here. */
export type KeyOf = (id: string) => Uint8Array | null;

/** No personal value is opened: each reads null, as after erasure. */
export const withoutKeys: KeyOf = () => null;

/** An entry as stored: personal values sealed, body in the version it was written in. */
export type StoredEntry = Entry<string, Json>;

/**
 * The stored bytes as an entry, nothing opened or lifted.
 * @throws Where they are no entry at all.
 */
export function parseStored(bytes: Uint8Array): StoredEntry {
  const stored: unknown = JSON.parse(textOfStored(bytes));
  if (!isStored(stored)) throw new TypeError('These bytes are no entry');
  return stored;
}

const TEXTS = ['branch', 'stream', 'by', 'device', 'command', 'kind'] as const;
const NUMBERS = ['seq', 'streamSeq', 'at', 'v'] as const;

/** Has it all that an entry has? What its kind may hold is the entry table's to say. */
function isStored(value: unknown): value is StoredEntry {
  if (typeof value !== 'object' || value === null || !('body' in value)) return false;
  const fields = new Map<string, unknown>(Object.entries(value));
  return (
    TEXTS.every((name) => typeof fields.get(name) === 'string') &&
    NUMBERS.every((name) => typeof fields.get(name) === 'number')
  );
}

/** An entry as the shop reads it: personal values opened where `keyOf` has their key, body lifted to its newest shape. */
export function readEntry(bytes: Uint8Array, keyOf: KeyOf, lifts?: Lifts): Entry {
  const stored = parseStored(bytes);
  const { kind, v, body } = lift({ kind: stored.kind, v: stored.v, body: openBody(stored.body, keyOf) }, lifts);
  return {
    branch: stored.branch,
    seq: stored.seq,
    stream: stored.stream,
    streamSeq: stored.streamSeq,
    at: stored.at,
    by: stored.by,
    device: stored.device,
    command: stored.command,
    kind,
    v,
    body,
  };
}

/** Are these the bytes that were hashed when the entry was written? */
export const fitsHash = ({ bytes, prev_hash, hash }: Pick<JournalTable, 'bytes' | 'prev_hash' | 'hash'>): boolean =>
  sameBytes(hash, chainHash(prev_hash, bytes, sha256));
