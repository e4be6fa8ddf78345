import Database from 'better-sqlite3';
import { migrate } from '../migrations/migrate.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { makeTable } from '../projections/readTables.ts';
import type { ShopTables } from '../schema.ts';
import { kyselyOn, type Sqlite } from '../sqlite/connection.ts';

/** A table, index, trigger or view of a shop's file, with the text that made it. */
export type Made = { readonly type: string; readonly name: string; readonly of: string; readonly text: string };

/** What differs: an object that is missing, is not as it was made (`made`: as it should be), or that nobody of ours made. */
export type ChangedMade = {
  readonly name: string;
  readonly of: string;
  readonly type: string;
  readonly made: Made | null;
};

/**
 * Holds every table, index and trigger of a shop's file against a fresh one: a trigger that is gone lets entries be
 * changed, an index that is gone lets two parts into one slot. A file of an older version, or read tables of older rules,
 * are not compared: they are made anew first.
 */
export async function changedSchema(sqlite: Sqlite): Promise<readonly ChangedMade[]> {
  if (Number(sqlite.pragma('user_version', { simple: true })) !== NEWEST_VERSION) return [];
  const older = olderTables(sqlite);
  const compared = ({ of }: Made) => !older.has(of);
  const wanted = (await asMade()).filter(compared);
  const found = madeIn(sqlite).filter(compared);
  const textOf = new Map(found.map((one) => [one.name, one.text]));
  const ours = new Set(wanted.map(({ name }) => name));
  return [
    ...wanted.filter(({ name, text }) => textOf.get(name) !== text).map((made) => ({ ...made, made })),
    ...found.filter(({ name }) => !ours.has(name)).map((one) => ({ ...one, made: null })),
  ];
}

async function asMade(): Promise<readonly Made[]> {
  const fresh = new Database(':memory:');
  try {
    const db = kyselyOn<ShopTables>(fresh);
    await migrate(fresh, db, '');
    for (const spec of PROJECTIONS.flatMap(({ tables }) => tables)) await makeTable(db, spec);
    return madeIn(fresh);
  } finally {
    fresh.close();
  }
}

/** What SQLite and the migrations' own records need is theirs. */
const madeIn = (sqlite: Sqlite): readonly Made[] =>
  sqlite
    .prepare<[], Made>(
      `select type, name, tbl_name as 'of', sql as text from main.sqlite_master
        where sql is not null and tbl_name not like 'sqlite_%' and tbl_name not like 'kysely_%'`,
    )
    .all();

function olderTables(sqlite: Sqlite): ReadonlySet<string> {
  const known = sqlite.prepare('select version from projection where name = ?').pluck();
  return new Set(
    PROJECTIONS.filter(({ name, version }) => known.get(name) !== version).flatMap(({ tables }) =>
      tables.map(({ name }) => name),
    ),
  );
}

/** Makes triggers anew that are not as they were made, and takes away what nobody of ours made. @returns Their names. */
export function makeTriggersAnew(sqlite: Sqlite, changed: readonly ChangedMade[]): readonly string[] {
  const triggers = changed.filter(({ type }) => type === 'trigger');
  sqlite.transaction(() => {
    for (const { name, made } of triggers) {
      sqlite.exec(`drop trigger if exists main."${name.replaceAll('"', '""')}"`);
      if (made) sqlite.exec(made.text);
    }
  })();
  return triggers.map(({ name }) => name);
}
