import type { Kysely } from 'kysely';
import { type KeyOf, parseStored, readEntry, withoutKeys } from '../journal/readEntry.ts';
import { recognisableIn, recognitionDigest } from '../recognition/recognisable.ts';
import type { ShopTables } from '../schema.ts';
import type { Projection, ReadTableWriter, Seen } from './projection.ts';
import { RowSums } from './rowSums.ts';
import { readTableWriter } from './writer.ts';

/** What projections need beside the entry. */
export type ProjectionTools = {
  readonly keyOf: KeyOf;
  readonly searchKey: Uint8Array;
  /** The key that sums up read tables. */
  readonly tableKey: Uint8Array;
};

/**
 * Applies entries, in order, to the tables of some projections.
 * @returns What the tables' rows came to be more or less.
 */
export async function applyEntries(
  db: Kysely<ShopTables>,
  projections: readonly Projection[],
  bytesOfEntries: readonly Uint8Array[],
  tools: ProjectionTools,
): Promise<RowSums> {
  const sums = new RowSums(tools.tableKey);
  const write: ReadTableWriter = readTableWriter(
    db,
    projections.flatMap(({ tables }) => tables),
    sums,
  );
  for (const bytes of bytesOfEntries) {
    const seen = seenFrom(bytes, tools);
    for (const projection of projections) await projection.apply(write, seen);
  }
  return sums;
}

function seenFrom(bytes: Uint8Array, { keyOf, searchKey }: ProjectionTools): Seen {
  const entry = readEntry(bytes, withoutKeys);
  const stored = parseStored(bytes);
  return {
    entry,
    stored,
    recognisable: () => {
      const opened = readEntry(bytes, keyOf);
      const found = recognisableIn(entry, opened.body as never, stored.body as never);
      return found.flatMap(({ kind, text, key }) => {
        const digest = recognitionDigest(searchKey, kind, text);
        return digest ? [{ kind, digest, key }] : [];
      });
    },
  };
}

/**
 * Applies one entry where others before it are missing: a projection that cannot follow it leaves it out.
 */
export async function applyOne(
  db: Kysely<ShopTables>,
  projections: readonly Projection[],
  bytes: Uint8Array,
  tools: ProjectionTools,
): Promise<void> {
  const specs = projections.flatMap(({ tables }) => tables);
  const write = readTableWriter(db, specs, new RowSums(tools.tableKey));
  for (const projection of projections) {
    try {
      await projection.apply(write, seenFrom(bytes, tools));
    } catch {
      // What it builds on was lost: the others still show what they can.
    }
  }
}
