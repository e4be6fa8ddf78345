import { type Kysely, sql } from 'kysely';
import { type Folded, foldOf, type States } from '../../core/entries/entryTable.ts';
import {
  type StreamOf,
  type Subject,
  type SubjectEntry,
  type SubjectOf,
  streamOf,
} from '../../core/entries/subjects.ts';
import type { Entry, Stream } from '../../core/journal/entry.ts';
import type { ShopTables } from '../schema.ts';
import type { FoldCache, KeptFold } from './foldCache.ts';
import { foldOn, unfolded } from './foldOn.ts';
import { lastLink } from './lastLink.ts';
import type { KeyOf } from './readEntry.ts';
import { type ReadQueries, readQueriesOf } from './readQueries.ts';
import {
  bytesOf,
  isUnreadable,
  type JournalRow,
  type ReadEntry,
  ROW_COLUMNS,
  readableBytes,
  readRow,
  type Unreadable,
} from './readRow.ts';

/** A stream that is set apart: entries of it cannot be read, so that nobody may act on what the rest says. */
export type SetApart = { readonly stream: Stream; readonly unreadable: readonly Unreadable[] };

/** Without the rest of these nothing could be done at all. */
const TOLD_ALL_THE_SAME: ReadonlySet<Subject> = new Set(['shop', 'people']);

/** `shop` and `people` are one stream each; every other subject has one for each id. */
type IdOf<S extends Folded> = S extends 'shop' | 'people' ? readonly [] : readonly [id: string];

/**
 * Reads the journal as it stood when the reader was made, and remembers what it looked at, so that a decision can be
 * refused when the journal moved on underneath it.
 */
export type Reader = {
  /** Number of the last entry this reader sees; 0 for an empty journal. */
  readonly head: number;
  /** Entries of a stream so far; 0 when there is none. */
  readonly version: (stream: Stream) => Promise<number>;
  /** Every entry of a stream that can be read, in order, personal values opened where their key lives. */
  readonly entries: <To extends StreamOf<Subject>>(
    stream: To,
  ) => Promise<readonly (Entry & SubjectEntry<SubjectOf<To>>)[]>;
  /** One entry of a stream by its number in the journal; null where there is none there, or it cannot be read. */
  readonly entryAt: <To extends StreamOf<Subject>>(
    stream: To,
    seq: number,
  ) => Promise<(Entry & SubjectEntry<SubjectOf<To>>) | null>;
  /**
   * What a stream tells, by its subject and id; null where there is none, and for one that is set apart: then it
   * stands in `setApart`. The streams of the shop and its people are told as far as they can be read: whoever acts on them
   * looks at `setApart`.
   */
  readonly load: <S extends Folded>(subject: S, ...id: IdOf<S>) => Promise<States[S]>;
  /** What a stream tells as far as it can be read, and the entries of it that cannot, by its name. */
  readonly loadStream: <S extends Folded>(subject: S, stream: StreamOf<S>) => Promise<KeptFold<S>>;
  /** The same by its id: for showing it, never to act on. */
  readonly loadReadable: <S extends Folded>(subject: S, ...id: IdOf<S>) => Promise<KeptFold<S>>;
  /** Streams loaded by this reader that are set apart. */
  readonly setApart: () => readonly SetApart[];
  /** Asks the read tables. A decision that did so is stale as soon as anything at all was written. */
  readonly rows: <R>(ask: (tables: ReadQueries) => Promise<R>) => Promise<R>;
};

/** What a reader looked at: versions of streams, and the whole journal when it asked the read tables. */
export type Looked = { readonly versions: ReadonlyMap<Stream, number>; readonly wholeAt: number | null };

export type TrackingReader = Reader & {
  readonly looked: () => Looked;
};

type Sources = {
  readonly db: Kysely<ShopTables>;
  readonly branch: string;
  readonly keyOf: KeyOf;
  readonly folds: FoldCache;
  /** Told of every entry that cannot be read, each time it is met. */
  readonly onUnreadable: (one: Unreadable, stream: Stream) => void;
};

/** A reader of the journal as it stands now. */
export async function openReaderAt({ db, branch, keyOf, folds, onUnreadable }: Sources): Promise<TrackingReader> {
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
  const rowsAfter = (stream: Stream, after: number, seq: number | null = null) => {
    const wanted = upTo(stream).where('stream_seq', '>', after).orderBy('stream_seq');
    return (seq === null ? wanted : wanted.where('seq', '=', seq)).select(ROW_COLUMNS).select(readableBytes).execute();
  };
  const readAll = (stream: Stream, rows: readonly JournalRow[]) => {
    const reads = rows.map((row) => readRow(row, keyOf));
    for (const read of reads) if (isUnreadable(read)) onUnreadable(read, stream);
    return reads;
  };
  const apart = new Map<Stream, SetApart>();
  const loadStream = async <S extends Folded>(subject: S, stream: StreamOf<S>): Promise<KeptFold<S>> => {
    const wanted = await version(stream);
    const kept = folds.get(subject, stream);
    const start = kept && kept.version <= wanted ? kept : unfolded(subject);
    const rows = start.version === wanted ? null : await rowsAfter(stream, start.version);
    const folded = rows ? foldOn(subject, start, readAll(stream, rows), wanted, bytesOf(rows)) : start;
    if (folds.emptied === emptied && (!kept || kept.version < wanted)) folds.set(subject, stream, folded);
    if (folded.unreadable.length > 0) apart.set(stream, { stream, unreadable: folded.unreadable });
    for (const one of folded.unreadable) onUnreadable(one, stream);
    return folded;
  };
  const loadReadable = <S extends Folded>(subject: S, ...[id]: IdOf<S>): Promise<KeptFold<S>> =>
    loadStream(subject, streamOf(subject, id));

  return {
    head,
    version,
    entries: async (stream) => {
      await version(stream);
      return readAll(stream, await rowsAfter(stream, 0)).filter((one) => isEntryIn(stream, one));
    },
    entryAt: async (stream, seq) => {
      await version(stream);
      const [read] = readAll(stream, await rowsAfter(stream, 0, seq));
      return read !== undefined && isEntryIn(stream, read) ? read : null;
    },
    load: async (subject, ...id) => {
      const { state, unreadable } = await loadReadable(subject, ...id);
      return unreadable.length > 0 && !TOLD_ALL_THE_SAME.has(subject) ? foldOf(subject).none : state;
    },
    loadStream,
    loadReadable,
    setApart: () => [...apart.values()],
    rows: async (ask) => {
      wholeAt = head;
      return ask(readQueriesOf(db));
    },
    looked: () => ({ versions, wholeAt }),
  };
}

const isEntryIn = <To extends StreamOf<Subject>>(
  stream: To,
  read: ReadEntry | Unreadable,
): read is ReadEntry & SubjectEntry<SubjectOf<To>> => !isUnreadable(read) && read.stream === stream;
