import type { Change } from '../../../core/contract/contract.ts';

/** The journal as the change stream needs it. */
export type ChangeSource = {
  /** The number of the newest entry, 0 before the first. */
  readonly headSeq: () => number | Promise<number>;
  /** What was written after `since`, in order, without gaps, until the signal. */
  readonly changes: (from: { readonly since: number; readonly signal?: AbortSignal }) => AsyncIterable<{
    readonly seq: number;
    readonly streams: readonly string[];
    readonly kinds: readonly string[];
  }>;
};

/**
 * One window's change stream. The first item comes at once and says where it starts: behind `since`, or from now on
 * with `null`. It equals `since` unless this is not the journal the window knew; then everything it holds is stale.
 */
export async function* changeStream(
  source: ChangeSource,
  since: number | null,
  signal?: AbortSignal,
): AsyncGenerator<Change, void> {
  const head = await source.headSeq();
  // A window ahead of the journal knew another one (a backup was brought back): it starts here, and sees so.
  const start = since === null || since > head ? head : since;
  yield { seq: start, streams: [], kinds: [] };
  for await (const { seq, streams, kinds } of source.changes({ since: start, ...(signal ? { signal } : {}) })) {
    yield { seq, streams: [...streams], kinds: [...kinds] };
  }
}
