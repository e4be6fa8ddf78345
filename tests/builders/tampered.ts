import Database from 'better-sqlite3';
import { CHAIN_START, chainHash } from '../../core/journal/chain.ts';
import { sha256 } from '../../db/seal/sha256.ts';

/**
 * Changes a database file behind the service's back, as someone with the disk in hand could: no trigger, no key holds, and
 * the triggers stand there again afterwards as if nothing had been done.
 */
export function tampered(path: string, change: string | ((file: Database.Database) => void)): void {
  const sqlite = new Database(path);
  try {
    const triggers = sqlite
      .prepare<[], { name: string; sql: string }>(`select name, sql from sqlite_master where type = 'trigger'`)
      .all();
    for (const { name } of triggers) sqlite.exec(`drop trigger ${name}`);
    sqlite.pragma('foreign_keys = OFF');
    if (typeof change === 'string') sqlite.exec(change);
    else change(sqlite);
    for (const { sql } of triggers) sqlite.exec(sql);
  } finally {
    sqlite.close();
  }
}

/** Chains every entry from `from` on anew, as a forger without the shop's key would. */
export function chainedAnew(file: Database.Database, from = 1): void {
  const hashOf = file.prepare<[number], Buffer>('select hash from journal where seq = ?').pluck();
  const rows = file
    .prepare<[number], { seq: number; bytes: Buffer }>('select seq, bytes from journal where seq >= ? order by seq')
    .all(from);
  let before = (hashOf.get(from - 1) as Buffer | undefined) ?? Buffer.from(CHAIN_START);
  for (const { seq, bytes } of rows) {
    const hash = Buffer.from(chainHash(before, bytes, sha256));
    file.prepare('update journal set prev_hash = ?, hash = ? where seq = ?').run(before, hash, seq);
    before = hash;
  }
}

/** Changes a database file and leaves it at that: what is dropped stays dropped. */
export function changedInPlain(path: string, statements: string): void {
  const sqlite = new Database(path);
  try {
    sqlite.exec(statements);
  } finally {
    sqlite.close();
  }
}
