import type { Change } from '../../core/contract/contract.ts';

const FIRST_WAIT_MS = 200;
const LONGEST_WAIT_MS = 5_000;

export type Follow = {
  /** Opens the change stream behind a number; `null` for from now on. */
  readonly changes: (since: number | null, signal: AbortSignal) => Promise<AsyncIterable<Change>>;
  readonly onChange: (change: Change) => void;
  /** Everything held may be stale: nobody knows what was missed. */
  readonly onAnew: () => void;
  /** Whether the stream stands. */
  readonly onConnected: (connected: boolean) => void;
  readonly wait: (ms: number) => Promise<void>;
  readonly signal: AbortSignal;
};

/**
 * Follows the one change stream of this window until told to stop. After a cut it comes back with the last number
 * it heard, sooner at first and then every few seconds, and misses nothing.
 */
export async function followChanges(follow: Follow): Promise<void> {
  let since: number | null = null;
  for (let wait = FIRST_WAIT_MS; !follow.signal.aborted; wait = Math.min(wait * 2, LONGEST_WAIT_MS)) {
    try {
      let started = false;
      for await (const change of await follow.changes(since, follow.signal)) {
        if (!started) follow.onConnected(true);
        // The first item repeats our number, unless the journal is not the one we knew or we knew none.
        if (!started && change.seq !== since) follow.onAnew();
        else follow.onChange(change);
        started = true;
        since = change.seq;
        wait = FIRST_WAIT_MS / 2;
      }
    } catch {
      // Cut off, refused or not up yet: all the same from here, and the window says that it waits.
    }
    follow.onConnected(false);
    if (!follow.signal.aborted) await follow.wait(wait);
  }
}
