import { type Kysely, sql } from 'kysely';
import type { Entry, Stream } from '../../core/journal/entry.ts';
import type { ReadTables } from '../projections/tables.ts';
import type { ShopTables } from '../schema.ts';
import { type FoldCache, foldOn } from './foldCache.ts';
import { lastLink } from './lastLink.ts';
import { type KeyOf, readEntry } from './readEntry.ts';

/** What may be asked of the read tables: nothing that writes. */
export type ReadQueries = Pick<Kysely<ReadTables>, 'selectFrom' | 'selectNoFrom' | 'with' | 'fn' | 'dynamic'>;

/**
 * Reads the journal as it stood when the reader was made, and remembers what it looked at, so that a decision can be
 * refused when the journal moved on underneath it.
 */
export type Reader = {
  /** Number of the last entry this reader sees; 0 for an empty journal. */
  readonly head: number;
  /** Entries of a stream so far; 0 when there is none. */
  readonly version: (stream: Stream) => Promise<number>;
  /** Every entry of a stream, in order, personal values opened where their key lives. */
  readonly entries: (stream: Stream) => Promise<readonly Entry[]>;
  /**
   * A stream folded into a state. Kept in memory by stream version, so `apply` must be a function that is always the
   * same one (declared in a module) and must not change the state it is given.
   */
  readonly fold: <S, E>(stream: Stream, initial: S, apply: (state: S, entry: E) => S) => Promise<S>;
  /** Asks the read tables. A decision that did so is stale as soon as anything at all was written. */
  readonly rows: <R>(ask: (tables: ReadQueries) => Promise<R>) => Promise<R>;
};

/** What a reader looked at: versions of streams, and the whole journal when it asked the read tables. */
export type Looked = { readonly versions: ReadonlyMap<Stream, number>; readonly wholeAt: number | null };

export type TrackingReader = Reader & {
  /** When the last entry was written; 0 for an empty journal. */
  readonly headAt: number;
  readonly looked: () => Looked;
};

type Sources = {
  readonly db: Kysely<ShopTables>;
  readonly branch: string;
  readonly keyOf: KeyOf;
  readonly folds: FoldCache;
};

/** A reader of the journal as it stands now. */
export async function openReaderAt({ db, branch, keyOf, folds }: Sources): Promise<TrackingReader> {
  const last = await lastLink(db, branch);
  const head = last?.seq ?? 0;
  const { emptied } = folds;
  const versions = new Map<Stream, number>();
  let wholeAt: number | null = null;

  // The plus keeps SQLite from walking the whole journal by `seq` when the stream's own index is at hand.
  const upTo = (stream: Stream) =>
    db
      .selectFrom('journal')
      .where('branch', '=', branch)
      .where('stream', '=', stream)
      .where(sql<number>`+seq`, '<=', head);
  const version = async (stream: Stream) => {
    const known = versions.get(stream);
    if (known !== undefined) return known;
    const { most } = await upTo(stream)
      .select(({ fn }) => fn.max('stream_seq').as('most'))
      .executeTakeFirstOrThrow();
    const count = most === null ? 0 : Number(most);
    versions.set(stream, count);
    return count;
  };
  const entriesAfter = async (stream: Stream, after: number) => {
    const rows = await upTo(stream).where('stream_seq', '>', after).orderBy('stream_seq').select('bytes').execute();
    return rows.map((row) => readEntry(row.bytes, keyOf));
  };

  return {
    head,
    headAt: last?.at ?? 0,
    version,
    entries: async (stream) => {
      await version(stream);
      return entriesAfter(stream, 0);
    },
    fold: async (stream, initial, apply) => {
      const wanted = await version(stream);
      const kept = folds.get(apply, stream);
      const start = kept && kept.version <= wanted ? kept : { version: 0, state: initial };
      if (start.version === wanted) return start.state as typeof initial;
      const state = foldOn(start.state as typeof initial, await entriesAfter(stream, start.version), apply);
      if (folds.emptied === emptied && (!kept || kept.version < wanted))
        folds.set(apply, stream, { version: wanted, state });
      return state;
    },
    rows: async (ask) => {
      wholeAt = head;
      return ask(db as unknown as Kysely<ReadTables>);
    },
    looked: () => ({ versions, wholeAt }),
  };
}
