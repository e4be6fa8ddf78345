import { type Kysely, sql } from 'kysely';
import { foldStream } from '../journal/foldStream.ts';
import { type KeyOf, parseStored, withoutKeys } from '../journal/readEntry.ts';
import { isUnreadable, type JournalRow, readRow } from '../journal/readRow.ts';
import { RECOGNISABLE, recognisableIn, recognitionDigest } from '../recognition/recognisable.ts';
import type { ShopTables } from '../schema.ts';
import type { FoldStream, Projection, ReadTableWriter, Seen, Touched } from './projection.ts';
import { RowSums } from './rowSums.ts';
import { readTableWriter } from './writer.ts';

/** The journal that streams are folded from: the file that is written, or another where tables are made anew beside it. */
export type JournalOf = { readonly journal: Kysely<ShopTables>; readonly branch: string };

/** What projections need beside the entry. */
export type ProjectionTools = {
  readonly keyOf: KeyOf;
  readonly searchKey: Uint8Array;
  /** The key that sums up read tables. */
  readonly tableKey: Uint8Array;
};

const writerFor = (db: Kysely<ShopTables>, projections: readonly Projection[], sums: RowSums): ReadTableWriter =>
  readTableWriter(
    db,
    projections.flatMap(({ tables }) => tables),
    sums,
  );

/**
 * Applies entries of a branch that were just written, in order, to the tables of some projections.
 * @returns What the tables' rows came to be more or less.
 * @throws {OnlyOneError} Where only one row may hold something.
 */
export async function applyEntries(
  db: Kysely<ShopTables>,
  branch: string,
  projections: readonly Projection[],
  rows: readonly JournalRow[],
  tools: ProjectionTools,
): Promise<RowSums> {
  const sums = new RowSums(tools.tableKey);
  const write = writerFor(db, projections, sums);
  const all: Seen[] = [];
  for (const row of rows) {
    const seen = seenFrom(row, tools);
    if (!seen) throw new Error('An entry was written that cannot be read');
    for (const projection of projections) await projection.apply(write, seen);
    all.push(seen);
  }
  const folded = foldIn({ journal: db, branch });
  for (const touched of touchedBy(all)) for (const { settle } of projections) await settle?.(write, touched, folded);
  return sums;
}

/**
 * Applies entries as they lie on the disk: one that cannot be read is left out, and so is what a projection makes of one
 * that it cannot follow, where others before it are missing or set apart. In the caller's transaction.
 */
export async function applyReadable(
  tx: Kysely<ShopTables>,
  from: JournalOf,
  projections: readonly Projection[],
  rows: readonly JournalRow[],
  tools: ProjectionTools,
): Promise<void> {
  const write = writerFor(tx, projections, new RowSums(tools.tableKey));
  const readable = rows.flatMap((row) => seenFrom(row, tools) ?? []);
  const folded = foldIn(from);
  const all = async () => {
    for (const seen of readable) for (const projection of projections) await projection.apply(write, seen);
    for (const touched of touchedBy(readable))
      for (const { settle } of projections) await settle?.(write, touched, folded);
  };
  if (await orNothing(tx, all)) return;
  // What one builds on is missing: the others still show what they can.
  for (const seen of readable)
    for (const projection of projections) await orNothing(tx, () => projection.apply(write, seen));
  for (const touched of touchedBy(readable))
    for (const { settle } of projections) await orNothing(tx, async () => settle?.(write, touched, folded));
}

const foldIn =
  ({ journal, branch }: JournalOf): FoldStream =>
  (subject, stream) =>
    foldStream(journal, branch, subject, stream);

/** Streams that entries belong to, in the order in which they were first met. */
const touchedBy = (seen: readonly Seen[]): readonly Touched[] =>
  [
    ...Map.groupBy(
      seen.map(({ entry }) => entry),
      ({ stream }) => stream,
    ),
  ].map(([stream, entries]) => ({ stream, entries }));

/** Does some work inside a transaction, or nothing of it. @returns Whether it was done. */
async function orNothing(tx: Kysely<ShopTables>, work: () => Promise<void>): Promise<boolean> {
  await sql`savepoint attempt`.execute(tx);
  try {
    await work();
    return true;
  } catch {
    await sql`rollback to attempt`.execute(tx);
    return false;
  } finally {
    await sql`release attempt`.execute(tx);
  }
}

function seenFrom(row: JournalRow, { keyOf, searchKey }: ProjectionTools): Seen | null {
  const entry = readRow(row, withoutKeys);
  const { bytes } = row;
  if (isUnreadable(entry) || !bytes) return null;
  const stored = parseStored(bytes);
  return {
    entry,
    stored,
    recognisable: () => {
      if (!RECOGNISABLE.has(entry.kind)) return [];
      const opened = readRow(row, keyOf);
      const found = isUnreadable(opened) ? [] : recognisableIn(opened, stored.body);
      return found.flatMap(({ kind, text, key }) => {
        const digest = recognitionDigest(searchKey, kind, text);
        return digest ? [{ kind, digest, key }] : [];
      });
    },
  };
}
