import Database from 'better-sqlite3';
import type { Kysely } from 'kysely';
import { migrate } from '../migrations/migrate.ts';
import type { ProjectionTools } from '../projections/apply.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { makeTable } from '../projections/readTables.ts';
import { catchUp } from '../projections/rebuild.ts';
import type { ShopTables } from '../schema.ts';
import { kyselyOn, type Sqlite } from '../sqlite/connection.ts';

type Row = Readonly<Record<string, unknown>>;

/** Row numbers tried beyond the last that could be read, where nobody can say how many there are. */
const TRIED_BEYOND = 2000;

/**
 * What can still be read of a shop's file, in a fresh one: every row of journal, commands and notes that comes out
 * whole, and read tables made anew from the entries that fit their own hash. Whatever is damaged is left out; the file
 * it comes from is not touched.
 * @param into The fresh file; in memory unless given.
 */
export async function salvage(
  from: Sqlite,
  branch: string,
  tools: ProjectionTools,
  into: Sqlite = new Database(':memory:'),
): Promise<Sqlite> {
  const db = kyselyOn<ShopTables>(into);
  await migrate(into, db, '');
  const triggers = into
    .prepare<[], { name: string; sql: string }>(`select name, sql from sqlite_master where type = 'trigger'`)
    .all();
  // They let in only the next entry; here some are missing.
  for (const { name } of triggers) into.exec(`drop trigger ${name}`);
  into.pragma('foreign_keys = OFF');
  into.transaction(() => {
    for (const table of ['meta', 'erased_key', 'command', 'journal']) copyRows(from, into, table);
  })();
  await makeReadTables(into, db, branch, tools);
  for (const { sql } of triggers) into.exec(sql);
  return into;
}

/** Copies every row of a table that can be read into a table of the same name. */
export function copyRows(from: Sqlite, into: Sqlite, table: string): void {
  for (const row of rowsOf(from, table)) {
    const columns = Object.keys(row);
    const put = into.prepare(
      `insert or ignore into ${table} (${columns.join(', ')}) values (${columns.map(() => '?').join(', ')})`,
    );
    try {
      put.run(...Object.values(row));
    } catch {
      // A row whose columns are not what they must be is damaged.
    }
  }
}

/** Every row that can be read: all at once, or one by one around what cannot. */
function rowsOf(from: Sqlite, table: string): readonly Row[] {
  try {
    return from.prepare<[], Row>(`select * from ${table}`).all();
  } catch {
    return rowsOneByOne(from, table);
  }
}

function rowsOneByOne(from: Sqlite, table: string): readonly Row[] {
  const rows: Row[] = [];
  const most = tried(() => Number(from.prepare(`select max(rowid) from ${table}`).pluck().get()));
  const get = tried(() => from.prepare<[number], Row>(`select * from ${table} where rowid = ?`));
  if (!get) return [];
  for (let number = 1, last = 0; number <= (most ?? last + TRIED_BEYOND); number++) {
    const row = tried(() => get.get(number));
    if (!row) continue;
    rows.push(row);
    last = number;
  }
  return rows;
}

function tried<T>(work: () => T): T | null {
  try {
    return work();
  } catch {
    return null;
  }
}

async function makeReadTables(
  into: Sqlite,
  db: Kysely<ShopTables>,
  branch: string,
  tools: ProjectionTools,
): Promise<void> {
  for (const spec of PROJECTIONS.flatMap(({ tables }) => tables)) await makeTable(db, spec);
  await catchUp({ reading: db, db, branch, projections: PROJECTIONS, tools }, 0);
  into.exec('begin');
  const seq = Number(into.prepare('select coalesce(max(seq), 0) from journal where branch = ?').pluck().get(branch));
  for (const { name, version } of PROJECTIONS)
    into.prepare('insert into projection (name, version, seq) values (?, ?, ?)').run(name, version, seq);
  into.exec('commit');
}
