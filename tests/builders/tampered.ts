import Database from 'better-sqlite3';

/** Changes a database file behind the service's back, as someone with the disk in hand could: no trigger, no key holds. */
export function tampered(path: string, statements: string): void {
  const sqlite = new Database(path);
  try {
    for (const name of sqlite.prepare(`select name from sqlite_master where type = 'trigger'`).pluck().all())
      sqlite.exec(`drop trigger ${name}`);
    sqlite.pragma('foreign_keys = OFF');
    sqlite.exec(statements);
  } finally {
    sqlite.close();
  }
}
