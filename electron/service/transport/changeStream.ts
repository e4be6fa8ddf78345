/** What happened, without saying what was in it: enough for a window to know which of its answers are stale. */
export type Change = {
  /** The last entry this covers; asked again with it, the stream goes on behind it. */
  readonly seq: number;
  readonly streams: string[];
  readonly kinds: string[];
};

/** The journal as the change stream needs it. */
export type ChangeSource = {
  /** The number of the newest entry, 0 before the first. */
  readonly headSeq: () => number | Promise<number>;
  /** The entries behind `since` in order, `limit` at most. */
  readonly entriesSince: (since: number, limit: number) => readonly Noted[] | Promise<readonly Noted[]>;
  /** Calls back whenever entries were appended; returns how to stop that. */
  readonly onAppended: (listener: () => void) => () => void;
};

export type Noted = { readonly seq: number; readonly stream: string; readonly kind: string };

const AT_ONCE = 500;

/**
 * The changes behind `since`, in order and without gaps, for as long as the asker listens.
 * The first item comes at once: where the asker starts from (with `since: null`, from now on). It equals `since`
 * unless this is not the journal the asker knew; then everything it holds is stale.
 * A slow reader costs no memory: nothing is queued, what it missed is read from the journal and given in one.
 */
export async function* changeStream(
  source: ChangeSource,
  since: number | null,
  signal?: AbortSignal,
): AsyncGenerator<Change, void> {
  let news = Promise.withResolvers<void>();
  const wake = () => news.resolve();
  const stop = source.onAppended(wake);
  signal?.addEventListener('abort', wake);
  try {
    const head = await source.headSeq();
    // A reader ahead of the journal knew another one (a restored backup): it starts here, and sees so by the number.
    let seq = since === null || since > head ? head : since;
    yield { seq, streams: [], kinds: [] };
    while (!signal?.aborted) {
      // Renewed before reading: what is appended while we read, or while the asker is busy, wakes the next round.
      news = Promise.withResolvers();
      const entries = await source.entriesSince(seq, AT_ONCE);
      const last = entries.at(-1);
      if (last) {
        seq = last.seq;
        yield { seq, streams: unique(entries, 'stream'), kinds: unique(entries, 'kind') };
      } else if (!signal?.aborted) await news.promise;
    }
  } finally {
    stop();
    signal?.removeEventListener('abort', wake);
  }
}

function unique(entries: readonly Noted[], field: 'stream' | 'kind'): string[] {
  return [...new Set(entries.map((entry) => entry[field]))];
}
