import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { type Migration, Migrator } from 'kysely/migration';
import type { ShopTables } from '../schema.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { MIGRATIONS, migrationNumber } from './migrations.ts';

/** What a migration came to: the file's number before and after, and the copy taken before it. */
export type Migrated = { readonly from: number; readonly to: number; readonly snapshot: string | null };

/**
 * Brings a file to the newest shape, step by step, all in one transaction: either every step ran or none.
 * A file that holds anything is copied to `snapshots` first.
 * @param steps All steps; a shorter list in tests brings a file to an older shape.
 * @throws When a step fails: a defect; the file is as before.
 */
export async function migrate(
  sqlite: Sqlite,
  db: Kysely<ShopTables>,
  snapshots: string,
  steps: Readonly<Record<string, Migration>> = MIGRATIONS,
): Promise<Migrated> {
  const from = Number(sqlite.pragma('user_version', { simple: true }));
  const to = Math.max(...Object.keys(steps).map(migrationNumber));
  if (from === to) return { from, to, snapshot: null };
  const snapshot = from > 0 ? await takeSnapshot(sqlite, snapshots, from, to) : null;
  const migrator = new Migrator({ db, provider: { getMigrations: async () => numbered(steps, sqlite) } });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
  sqlite.pragma('wal_checkpoint(TRUNCATE)');
  return { from, to, snapshot };
}

/** Each step also writes its number into the file's header, in the same transaction. */
function numbered(steps: Readonly<Record<string, Migration>>, sqlite: Sqlite): Record<string, Migration> {
  const entries = Object.entries(steps).map(([name, step]): readonly [string, Migration] => [
    name,
    {
      up: async (db) => {
        await step.up(db);
        sqlite.pragma(`user_version = ${migrationNumber(name)}`);
      },
    },
  ]);
  return Object.fromEntries(entries);
}

async function takeSnapshot(sqlite: Sqlite, folder: string, from: number, to: number): Promise<string> {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const path = join(folder, `before-${to}-from-${from}.db`);
  await sqlite.backup(path);
  return path;
}
