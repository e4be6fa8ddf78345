import type { Kysely } from 'kysely';
import type { ReadTables } from '../projections/tables.ts';
import type { ShopTables } from '../schema.ts';

/** What may be asked of the read tables: nothing that writes. */
export type ReadQueries = Pick<Kysely<ReadTables>, 'selectFrom' | 'selectNoFrom' | 'with' | 'fn' | 'dynamic'>;

/** The read tables of a shop's file alone. A builder of all its tables is one of these too, which its type cannot say. */
export function readQueriesOf(db: Kysely<ShopTables>): ReadQueries {
  const whole: unknown = db;
  return whole as ReadQueries;
}
