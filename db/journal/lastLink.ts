import type { Kysely } from 'kysely';
import type { EpochMs } from '../../core/time.ts';
import type { ShopTables } from '../schema.ts';

/** The last entry of a branch, as far as the next one needs it. */
export type LastLink = { readonly seq: number; readonly hash: Uint8Array; readonly at: EpochMs };

/** The last entry of a branch; undefined while it has none. */
export function lastLink(db: Kysely<ShopTables>, branch: string): Promise<LastLink | undefined> {
  return db
    .selectFrom('journal')
    .where('branch', '=', branch)
    .orderBy('seq', 'desc')
    .limit(1)
    .select(['seq', 'hash', 'at'])
    .executeTakeFirst();
}
