import { chmodSync } from 'node:fs';
import Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteAdapter,
  type SqliteDatabase,
  SqliteDialect,
  SqliteDriver,
} from 'kysely';

export type Sqlite = Database.Database;

/** How long one connection waits for another before SQLITE_BUSY, milliseconds. */
const BUSY_MS = 5000;

/**
 * Opens the connection that writes: write-ahead log, every commit synced, what is deleted is overwritten. The file is
 * its owner's alone, wherever it lies; SQLite gives its log the same rights.
 */
export function openWriter(path: string): Sqlite {
  const sqlite = new Database(path, { timeout: BUSY_MS });
  if (process.platform !== 'win32') chmodSync(path, 0o600);
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.pragma('foreign_keys = ON');
  sqlite.pragma('secure_delete = ON');
  sqlite.pragma('recursive_triggers = ON');
  return sqlite;
}

/** Opens a connection that can only read, beside the writer. */
export function openReader(path: string): Sqlite {
  return new Database(path, { timeout: BUSY_MS, readonly: true, fileMustExist: true });
}

/** A query builder on a connection. Transactions begin by taking the write lock, so none fails half way for want of it. */
export function kyselyOn<Tables>(sqlite: Sqlite): Kysely<Tables> {
  return new Kysely<Tables>({ dialect: new ImmediateDialect(sqlite) });
}

class ImmediateDialect extends SqliteDialect {
  readonly #sqlite: Sqlite;

  constructor(sqlite: Sqlite) {
    super({ database: sqlite });
    this.#sqlite = sqlite;
  }

  override createDriver() {
    return new ImmediateDriver(this.#sqlite);
  }

  override createAdapter() {
    return new TransactionalAdapter();
  }
}

class ImmediateDriver extends SqliteDriver {
  readonly #sqlite: Sqlite;

  constructor(sqlite: Sqlite) {
    super({ database: withPreparedOnce(sqlite) });
    this.#sqlite = sqlite;
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    // A full disk rolls back by itself; a second rollback would hide that error behind its own.
    if (this.#sqlite.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** SQLite does roll back changes of tables; Kysely's own adapter does not use that. */
class TransactionalAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl() {
    return true;
  }
}

const KEPT_STATEMENTS = 300;

function withPreparedOnce(sqlite: Sqlite): SqliteDatabase {
  const statements = new Map<string, ReturnType<SqliteDatabase['prepare']>>();
  return {
    close: () => void sqlite.close(),
    prepare: (text) => {
      const known = statements.get(text);
      if (known) return known;
      if (statements.size >= KEPT_STATEMENTS) statements.clear();
      const made = sqlite.prepare<[readonly unknown[]]>(text);
      statements.set(text, made);
      return made;
    },
  };
}
