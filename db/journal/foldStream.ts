import type { Kysely } from 'kysely';
import type { Folded } from '../../core/entries/entryTable.ts';
import type { StreamOf } from '../../core/entries/subjects.ts';
import type { ShopTables } from '../schema.ts';
import type { KeptFold } from './foldCache.ts';
import { foldOn, unfolded } from './foldOn.ts';
import { withoutKeys } from './readEntry.ts';
import { bytesOf, ROW_COLUMNS, readableBytes, readRow } from './readRow.ts';

/** What all entries of a stream come to, every personal value null and every sealed text '': what read tables may hold. */
export async function foldStream<S extends Folded>(
  db: Kysely<ShopTables>,
  branch: string,
  subject: S,
  stream: StreamOf<S>,
): Promise<KeptFold<S>> {
  const rows = await db
    .selectFrom('journal')
    .where('branch', '=', branch)
    .where('stream', '=', stream)
    .orderBy('stream_seq')
    .select(ROW_COLUMNS)
    .select(readableBytes)
    .execute();
  const reads = rows.map((row) => readRow(row, withoutKeys));
  return foldOn(subject, unfolded(subject), reads, rows.at(-1)?.stream_seq ?? 0, bytesOf(rows));
}
