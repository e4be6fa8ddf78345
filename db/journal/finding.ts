import type { Unreadable } from './readRow.ts';

/** What only the whole check looks for, and what is wrong with the files themselves. */
type WholeWrong =
  | 'file-damaged'
  | 'not-as-acknowledged'
  | 'key-missing'
  | 'key-damaged'
  | 'sealed-value-does-not-open'
  | 'blob-damaged'
  | 'paper-not-as-issued'
  | 'read-table-differs'
  | 'command-records-changed'
  | 'schema-changed'
  | 'mark-damaged';

/** One thing that is wrong, and at which entry (0: at none). */
export type JournalFinding = {
  readonly seq: number;
  readonly wrong:
    | 'seq-not-next'
    | 'not-linked-to-the-one-before'
    | 'bytes-do-not-fit-hash'
    | 'bytes-not-canonical'
    | 'column-differs-from-bytes'
    | 'stream-not-next'
    | 'command-split'
    | 'command-not-as-noted'
    | 'command-missing'
    | 'sealed-head-forged'
    | 'sealed-head-does-not-fit'
    | 'tail-cut-behind-sealed-head'
    | 'printed-head-does-not-fit'
    | 'printed-head-unreadable'
    | 'blob-missing'
    | Exclude<Unreadable['wrong'], 'bytes-do-not-fit-hash'>
    | WholeWrong;
  readonly detail?: string;
};
