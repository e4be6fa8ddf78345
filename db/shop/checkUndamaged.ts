import { rmSync, statSync } from 'node:fs';
import { openReader } from '../sqlite/connection.ts';
import { Refused, refusalFromError } from './openRefusal.ts';

/**
 * Asks SQLite whether a file hangs together, through a connection that cannot write: a damaged file stays exactly as
 * it was found. The caller holds the folder's lock.
 * @throws {Refused} With SQLite's first complaint.
 */
export function checkUndamaged(path: string): void {
  // Even a reading connection makes these two where they are missing, empty; they go again.
  const made = [`${path}-wal`, `${path}-shm`].filter((file) => !statSync(file, { throwIfNoEntry: false }));
  try {
    const sqlite = openReader(path);
    try {
      const answer = String(sqlite.pragma('quick_check(1)', { simple: true }));
      if (answer !== 'ok') throw new Refused({ refused: 'damaged-file', path, detail: answer });
    } finally {
      sqlite.close();
    }
  } catch (error) {
    const refusal = refusalFromError(error, path);
    throw refusal ? new Refused(refusal) : error;
  } finally {
    for (const file of made) rmSync(file, { force: true });
  }
}
