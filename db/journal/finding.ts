/** One thing that is wrong, and at which entry. */
export type Finding = {
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
    | 'blob-missing';
  readonly detail?: string;
};
