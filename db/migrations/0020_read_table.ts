import { type Kysely, sql } from 'kysely';

/** What every read table's rows come to, so that a row changed behind the shop's back is found and the table made anew. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await sql.raw('create table read_table (name text primary key, digest text not null) strict').execute(db);
}
