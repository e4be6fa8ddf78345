import type { Kysely } from 'kysely';
import { type KeyOf, parseStored, readEntry, withoutKeys } from '../journal/readEntry.ts';
import { recognisableIn, recognitionDigest } from '../recognition/recognisable.ts';
import type { ShopTables } from '../schema.ts';
import type { Projection, ReadTableWriter, Seen } from './projection.ts';
import { readTableWriter } from './writer.ts';

/** What projections need beside the entry. */
export type ProjectionTools = { readonly keyOf: KeyOf; readonly searchKey: Uint8Array };

/** Applies entries, in order, to the tables of some projections. */
export async function applyEntries(
  db: Kysely<ShopTables>,
  projections: readonly Projection[],
  bytesOfEntries: readonly Uint8Array[],
  tools: ProjectionTools,
): Promise<void> {
  const write: ReadTableWriter = readTableWriter(
    db,
    projections.flatMap(({ tables }) => tables),
  );
  for (const bytes of bytesOfEntries) {
    const seen = seenFrom(bytes, tools);
    for (const projection of projections) await projection.apply(write, seen);
  }
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
