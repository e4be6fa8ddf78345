import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { imageOf, openImage } from './image.ts';

let folder: string;
const path = () => join(folder, 'a.db');
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'knowngood-image-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const rowsOf = (sqlite: Database.Database) => sqlite.prepare('select a, b from t order by a').all();

/** A file whose log holds what was written last. */
function written(rows: number): Database.Database {
  const sqlite = new Database(path());
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('wal_autocheckpoint = 0');
  sqlite.exec('create table t (a integer primary key, b text)');
  sqlite.pragma('wal_checkpoint(TRUNCATE)');
  const put = sqlite.prepare('insert into t (b) values (?)');
  for (let row = 0; row < rows; row++) put.run(`row ${row} ${'x'.repeat(row % 900)}`);
  return sqlite;
}

describe('a database file read as its last commit left it', () => {
  it('holds what stands in the log only, and nothing in the folder is touched', () => {
    const sqlite = written(300);
    const before = readdirSync(folder).map((name) => [name, statSync(join(folder, name)).mtimeMs]);
    const image = openImage(path());
    expect(rowsOf(image)).toEqual(rowsOf(sqlite));
    expect(readdirSync(folder).map((name) => [name, statSync(join(folder, name)).mtimeMs])).toEqual(before);
    image.close();
    sqlite.close();
  });

  it('holds of a log that was cut or damaged exactly what SQLite recovers of it', () => {
    const sqlite = written(40);
    const log = readFileSync(`${path()}-wal`);
    const [file, other] = [readFileSync(path()), join(folder, 'b.db')];
    sqlite.close();
    fc.assert(
      fc.property(fc.integer({ min: 0, max: log.length - 1 }), fc.boolean(), (at, cut) => {
        const bytes = Buffer.from(log);
        bytes[at] = (bytes[at] ?? 0) ^ 0x10;
        writeFileSync(other, file);
        writeFileSync(`${other}-wal`, bytes);
        rmSync(`${other}-shm`, { force: true });
        if (cut) truncateSync(`${other}-wal`, at);
        const image = openImage(other);
        const ours = rowsOf(image);
        image.close();
        const theirs = new Database(other);
        expect(ours).toEqual(rowsOf(theirs));
        theirs.close();
      }),
      { numRuns: 60 },
    );
  });

  it('is without a transaction that was cut short', () => {
    const sqlite = new Database(path());
    sqlite.pragma('journal_mode = TRUNCATE');
    sqlite.pragma('cache_size = 5');
    sqlite.exec('create table t (a integer primary key, b text)');
    const put = sqlite.prepare('insert into t (b) values (?)');
    for (let row = 0; row < 200; row++) put.run('y'.repeat(300));
    const kept = rowsOf(sqlite);
    // A cache this small writes pages to the file before the end of the transaction.
    sqlite.exec(`begin; update t set b = 'changed' || b; insert into t (b) select b from t`);
    const other = join(folder, 'cut.db');
    copyFileSync(path(), other);
    copyFileSync(`${path()}-journal`, `${other}-journal`);
    sqlite.exec('rollback');
    sqlite.close();
    expect(readFileSync(other).includes('changed')).toBe(true);
    const image = openImage(other);
    expect(rowsOf(image)).toEqual(kept);
    expect(image.pragma('integrity_check', { simple: true })).toBe('ok');
    image.close();
  });

  it('says that a file is not there', () => {
    expect(() => imageOf(join(folder, 'none.db'))).toThrow(/ENOENT/);
  });
});
