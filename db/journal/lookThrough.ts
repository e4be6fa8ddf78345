import type { Kysely } from 'kysely';
import { type BrokenLink, checkLink, type Link } from '../../core/journal/chain.ts';
import type { Stream } from '../../core/journal/entry.ts';
import type { ShopTables } from '../schema.ts';
import { sha256 } from '../seal/sha256.ts';
import { asRead, type Unreadable } from './readRow.ts';
import { ShapeCheck } from './shapeCheck.ts';
import { blobsIn } from './storedBytes.ts';

/** Entries looked at without letting others in between. */
const PAGE = 200;

/** What a look through a whole journal found. */
export type LookedThrough = {
  readonly entries: number;
  /** Entries that do not hold together with the one before, or not with their own hash. */
  readonly broken: readonly { readonly seq: number; readonly wrong: BrokenLink }[];
  /** Entries that cannot be read, whether they hold together or not. */
  readonly unreadable: readonly (Unreadable & { readonly stream: Stream })[];
  /** Every sealed file that an entry names. */
  readonly named: ReadonlySet<string>;
};

/**
 * Looks through a branch from its first entry to its last while others go on: does each link hold, can each entry be
 * read, and which sealed files are named. Reads the journal alone: no read table is asked.
 */
export async function lookThrough(
  db: Kysely<ShopTables>,
  branch: string,
  isOver: () => boolean = () => false,
): Promise<LookedThrough> {
  const broken: { seq: number; wrong: BrokenLink }[] = [];
  const unreadable: (Unreadable & { stream: Stream })[] = [];
  const shapes = new ShapeCheck();
  const named = new Set<string>();
  let before: Link | null = null;
  while (!isOver()) {
    const rows = await db
      .selectFrom('journal')
      .where('branch', '=', branch)
      .where('seq', '>', before?.seq ?? 0)
      .orderBy('seq')
      .limit(PAGE)
      .select(['seq', 'stream', 'stream_seq', 'bytes', 'prev_hash', 'hash'])
      .execute();
    for (const row of rows) {
      const { seq, bytes, prev_hash, hash } = row;
      const link: Link = { seq, bytes, prevHash: prev_hash, hash };
      const wrong = checkLink(before, link, sha256);
      if (wrong) broken.push({ seq, wrong });
      const strange = shapes.see(asRead(row));
      if (strange) unreadable.push({ ...strange, stream: row.stream });
      for (const blob of blobsIn(bytes)) named.add(blob);
      before = link;
    }
    if (rows.length < PAGE) break;
    await new Promise((resolve) => setImmediate(resolve));
  }
  return { entries: before?.seq ?? 0, broken, unreadable, named };
}
