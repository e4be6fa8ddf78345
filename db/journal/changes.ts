import type { Kysely } from 'kysely';
import type { Stream } from '../../core/journal/entry.ts';
import type { ShopTables } from '../schema.ts';

/** What one command wrote: its last entry's number, the streams and the kinds. Never a body. */
export type EntriesWritten = {
  readonly seq: number;
  readonly streams: readonly Stream[];
  readonly kinds: readonly string[];
};

/** Commands read at once for a reader that is behind. */
const PAGE = 200;

/** Wakes those who wait for the next entry. */
export class Bell {
  #waiting = new Set<() => void>();
  #rung = 0;
  #over = false;

  get over(): boolean {
    return this.#over;
  }

  get rung(): number {
    return this.#rung;
  }

  ring(): void {
    this.#rung += 1;
    for (const wake of this.#waiting) wake();
    this.#waiting.clear();
  }

  /** Ends every wait for good. */
  end(): void {
    this.#over = true;
    this.ring();
  }

  /** Waits until it rings again after `heard` rings, or until the signal. */
  next(heard: number, signal?: AbortSignal): Promise<void> {
    if (this.#rung !== heard || this.#over || signal?.aborted) return Promise.resolve();
    return new Promise((resolve) => {
      const wake = () => {
        this.#waiting.delete(wake);
        signal?.removeEventListener('abort', wake);
        resolve();
      };
      this.#waiting.add(wake);
      signal?.addEventListener('abort', wake, { once: true });
    });
  }
}

/**
 * What was written after `since`, one item per command, in order. Nothing is kept for a reader: a slow one is given
 * the next item when it asks, and one that was cut comes back with its last `seq`.
 */
export async function* changesAfter(
  db: Kysely<ShopTables>,
  branch: string,
  bell: Bell,
  { since, signal }: { readonly since: number; readonly signal?: AbortSignal },
): AsyncGenerator<EntriesWritten, void, void> {
  let last = since;
  while (!bell.over && !signal?.aborted) {
    const heard = bell.rung;
    const page = await changesPage(db, branch, last);
    for (const change of page) {
      yield change;
      last = change.seq;
      if (bell.over || signal?.aborted) return;
    }
    if (page.length === 0) await bell.next(heard, signal);
  }
}

async function changesPage(db: Kysely<ShopTables>, branch: string, after: number): Promise<readonly EntriesWritten[]> {
  const commands = await db
    .selectFrom('command')
    .where('branch', '=', branch)
    .where('last_seq', '>', after)
    .orderBy('last_seq')
    .limit(PAGE)
    .select(['command', 'last_seq'])
    .execute();
  const upTo = commands.at(-1)?.last_seq;
  if (upTo === undefined) return [];
  const entries = await db
    .selectFrom('journal')
    .where('branch', '=', branch)
    .where('seq', '>', after)
    .where('seq', '<=', upTo)
    .orderBy('seq')
    .select(['command', 'stream', 'kind'])
    .execute();
  const byCommand = Map.groupBy(entries, (entry) => entry.command);
  return commands.map(({ command, last_seq }) => {
    const own = byCommand.get(command) ?? [];
    return {
      seq: last_seq,
      streams: [...new Set(own.map(({ stream }) => stream))],
      kinds: [...new Set(own.map(({ kind }) => kind))],
    };
  });
}
