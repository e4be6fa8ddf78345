import { rmSync, statSync } from 'node:fs';
import { openReader, type Sqlite } from '../sqlite/connection.ts';
import { type OpenRefusal, Refused, refusalFromError } from './openRefusal.ts';

/**
 * Asks SQLite whether a file hangs together, and then looks into it, through a connection that cannot write: a damaged
 * file, or one that is not what was sealed, stays exactly as it was found. The caller holds the folder's lock.
 * @throws {Refused} With SQLite's first complaint, or what the look threw.
 */
export function checkUndamaged(path: string, look: (sqlite: Sqlite) => void): void {
  // Even a reading connection makes these two where they are missing, empty; they go again.
  const made = [`${path}-wal`, `${path}-shm`].filter((file) => !statSync(file, { throwIfNoEntry: false }));
  try {
    const sqlite = openReader(path);
    try {
      const answer = String(sqlite.pragma('quick_check(1)', { simple: true }));
      if (answer !== 'ok') throw new Refused({ refused: 'damaged-file', path, detail: answer });
      look(sqlite);
    } finally {
      sqlite.close();
    }
  } catch (error) {
    const refusal = error instanceof Refused ? null : (refusalFromError(error, path) ?? changedShape(error, path));
    throw refusal ? new Refused(refusal) : error;
  } finally {
    for (const file of made) rmSync(file, { force: true });
  }
}

/** Our own statements fail only where the file's description of its tables was changed. */
const changedShape = (error: unknown, path: string): OpenRefusal | null =>
  error instanceof Error && 'code' in error && error.code === 'SQLITE_ERROR'
    ? { refused: 'damaged-file', path, detail: error.message }
    : null;
