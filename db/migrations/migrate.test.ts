import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { sql } from 'kysely';
import type { Migration } from 'kysely/migration';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ShopTables } from '../schema.ts';
import { kyselyOn, openReader, openWriter, type Sqlite } from '../sqlite/connection.ts';
import { migrate } from './migrate.ts';
import { MIGRATIONS, migrationNumber, NEWEST_VERSION } from './migrations.ts';

let folder: string;
let sqlite: Sqlite;
let db: Kysely<ShopTables>;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'knowngood-migrate-'));
  sqlite = openWriter(join(folder, 'shop.db'));
  db = kyselyOn<ShopTables>(sqlite);
});
afterEach(() => {
  sqlite.close();
  rmSync(folder, { recursive: true });
});

const snapshots = () => join(folder, 'snapshots');
const upTo = (name: string) =>
  Object.fromEntries(Object.entries(MIGRATIONS).filter(([step]) => migrationNumber(step) <= migrationNumber(name)));
const before = (name: string) =>
  Object.fromEntries(Object.entries(MIGRATIONS).filter(([step]) => migrationNumber(step) < migrationNumber(name)));
const version = (of: Sqlite = sqlite) => of.pragma('user_version', { simple: true });

const hash = (seq: number) => `x'${String(seq).padStart(64, '0')}'`;
const entry = (seq: number, streamSeq: number, prev: string) =>
  `insert into journal values ('main', ${seq}, 'job:1', ${streamSeq}, 5, 'staff-1', 'bench-1', 'c${seq}', 'could-not-be-reproduced', 1, x'7b7d', ${prev}, ${hash(seq)})`;

/** Each step's own case: rows of the shape before go in, the step runs, rows of the shape after are compared. */
const CASES: Readonly<Record<string, { readonly fill: () => void; readonly check: () => void }>> = {
  '0010_journal': {
    fill: () => expect(sqlite.prepare('select count(*) from sqlite_master').pluck().get()).toBe(0),
    check: () => {
      sqlite.exec(entry(1, 1, 'zeroblob(32)'));
      sqlite.exec(entry(2, 2, hash(1)));
      sqlite.exec(`insert into command values ('main', 'c1', x'00', 1, 2, 'job:1', null)`);
      const refusals: readonly (readonly [statement: string, says: RegExp])[] = [
        [entry(4, 3, hash(2)), /only the next entry/],
        [entry(3, 5, hash(2)), /only the next entry/],
        [entry(3, 3, hash(9)), /only the next entry/],
        [entry(3, 3, `x'02'`), /only the next entry|CHECK/],
        [`update journal set at = 6`, /append-only/],
        [`delete from journal`, /append-only/],
        [`update command set made = 'shop'`, /append-only/],
        [`delete from command`, /append-only/],
        [`insert into command values ('main', 'c1', x'00', 1, 2, 'job:1', null)`, /written once/],
        [`insert into command values ('main', 'c9', x'00', 8, 9, 'job:1', null)`, /FOREIGN KEY/],
        [`insert into journal (branch, seq) values ('main', 'three')`, /INTEGER|only the next entry|datatype/i],
        [`insert into erased_key values ('o1/contact/1', 5); delete from erased_key`, /append-only/],
      ];
      for (const [statement, says] of refusals) expect(() => sqlite.exec(statement), statement).toThrow(says);
      expect(sqlite.prepare('select count(*) from journal').pluck().get()).toBe(2);
    },
  },
  '0020_read_table': {
    fill: () => sqlite.exec(entry(1, 1, 'zeroblob(32)')),
    check: () => {
      sqlite.exec(`insert into read_table values ('job_now', '${'0'.repeat(64)}')`);
      expect(() => sqlite.exec(`insert into read_table values ('job_now', '1')`)).toThrow(/UNIQUE/);
      expect(sqlite.prepare('select count(*) from journal').pluck().get()).toBe(1);
    },
  },
};

describe('every migration', () => {
  it('has its own case here, and its number rises by ten', () => {
    expect(Object.keys(CASES)).toEqual(Object.keys(MIGRATIONS));
    const numbers = Object.keys(MIGRATIONS).map(migrationNumber);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
    expect(numbers.every((number) => Number.isInteger(number) && number > 0)).toBe(true);
    expect(Math.max(...numbers)).toBe(NEWEST_VERSION);
  });

  it.each(Object.keys(CASES))('%s brings a file of the shape before to its own', async (name) => {
    if (Object.keys(before(name)).length > 0) await migrate(sqlite, db, snapshots(), before(name));
    CASES[name]?.fill();
    await migrate(sqlite, db, snapshots(), upTo(name));
    expect(version()).toBe(migrationNumber(name));
    CASES[name]?.check();
  });
});

describe('bringing a shop’s file to a newer shape', () => {
  const withNote: Record<string, Migration> = {
    ...MIGRATIONS,
    '9000_note': { up: async (on) => void (await sql.raw('create table note (text text) strict').execute(on)) },
  };
  const failing: Record<string, Migration> = {
    ...withNote,
    '9010_wrong': { up: async (on) => void (await sql.raw('create table note (text text) strict').execute(on)) },
  };

  it('needs no copy of a file that holds nothing yet, and runs once', async () => {
    expect(await migrate(sqlite, db, snapshots())).toEqual({ from: 0, to: NEWEST_VERSION, snapshot: null });
    expect(await migrate(sqlite, db, snapshots())).toEqual({
      from: NEWEST_VERSION,
      to: NEWEST_VERSION,
      snapshot: null,
    });
    expect(existsSync(snapshots())).toBe(false);
  });

  it('copies the file first', async () => {
    await migrate(sqlite, db, snapshots());
    sqlite.exec(entry(1, 1, 'zeroblob(32)'));
    const { snapshot } = await migrate(sqlite, db, snapshots(), withNote);
    const copy = openReader(snapshot ?? '');
    expect(version(copy)).toBe(NEWEST_VERSION);
    expect(copy.prepare('select count(*) from journal').pluck().get()).toBe(1);
    expect(copy.prepare(`select count(*) from sqlite_master where name = 'note'`).pluck().get()).toBe(0);
    copy.close();
    expect(version()).toBe(9000);
  });

  it('runs every step or none: a step that fails leaves the file as it was', async () => {
    await migrate(sqlite, db, snapshots());
    await expect(migrate(sqlite, db, snapshots(), failing)).rejects.toThrow(/note already exists/);
    expect(version()).toBe(NEWEST_VERSION);
    expect(sqlite.prepare(`select count(*) from sqlite_master where name = 'note'`).pluck().get()).toBe(0);
    expect(await migrate(sqlite, db, snapshots(), withNote)).toMatchObject({ to: 9000 });
  });
});
