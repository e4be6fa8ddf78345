import { sql } from 'kysely';
import type { AnyDraft } from '../../core/entries/draft.ts';
import { type EntryProblem, entryProblem, isKnown } from '../../core/entries/problem.ts';
import type { Entry } from '../../core/journal/entry.ts';
import { fitsHash, type KeyOf, readEntry } from './readEntry.ts';

/** An entry of the table, as read back. */
export type ReadEntry = Entry & AnyDraft;

/** An entry that cannot be read, by its number in the journal, and why. */
export type Unreadable = {
  readonly seq: number;
  readonly wrong:
    | EntryProblem['wrong']
    | 'bytes-do-not-fit-hash'
    | 'too-large'
    | 'not-an-entry'
    | 'not-in-its-place'
    | 'does-not-follow';
  /** Where in its body, never what stands there. */
  readonly at?: string;
};

/** Bytes of the largest entry that is read: far more than the largest paper or report. Common practice, no source. */
const MOST_BYTES = 16 * 1024 * 1024;

/** A row as far as it is read; `bytes` null where there are more than are read. */
export type JournalRow = {
  readonly seq: number;
  readonly stream: string;
  readonly stream_seq: number;
  readonly bytes: Uint8Array | null;
  readonly prev_hash: Uint8Array;
  readonly hash: Uint8Array;
};

/** What is asked of the journal to read a row: these columns, and its bytes where they are not too many. */
export const ROW_COLUMNS = ['seq', 'stream', 'stream_seq', 'prev_hash', 'hash'] as const;
export const readableBytes = sql<Uint8Array | null>`case when length(bytes) <= ${MOST_BYTES} then bytes end`.as(
  'bytes',
);

/** How many bytes rows hold. */
export const bytesOf = (rows: readonly JournalRow[]): number =>
  rows.reduce((sum, { bytes }) => sum + (bytes?.length ?? 0), 0);

/** A row as it is read, of one that has all its bytes. */
export const asRead = <Of extends JournalRow>(row: Of): JournalRow => ({
  ...row,
  bytes: row.bytes && row.bytes.length <= MOST_BYTES ? row.bytes : null,
});

/** A stored row as an entry; else why it is none: what was changed, is of a later program or of none is never shown as the shop's word. */
export function readRow(row: JournalRow, keyOf: KeyOf): ReadEntry | Unreadable {
  const { seq, bytes } = row;
  if (!bytes) return { seq, wrong: 'too-large' };
  if (!fitsHash({ ...row, bytes })) return { seq, wrong: 'bytes-do-not-fit-hash' };
  const entry = parsed(bytes, keyOf);
  if (!entry) return { seq, wrong: 'not-an-entry' };
  if (entry.seq !== seq || entry.stream !== row.stream || entry.streamSeq !== row.stream_seq)
    return { seq, wrong: 'not-in-its-place' };
  return isKnown(entry) ? entry : { seq, ...(entryProblem(entry) ?? { wrong: 'not-an-entry' }) };
}

export const isUnreadable = (read: ReadEntry | Unreadable): read is Unreadable => 'wrong' in read;

function parsed(bytes: Uint8Array, keyOf: KeyOf): Entry | null {
  try {
    return readEntry(bytes, keyOf);
  } catch {
    return null;
  }
}
