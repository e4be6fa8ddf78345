import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { Sqlite } from './connection.ts';
import { rolledBack } from './rolledBack.ts';
import { walPages } from './walPages.ts';

/** How often a file is read again that another process wrote to meanwhile. */
const TRIES = 20;

/**
 * A database file as its last commit left it, read without SQLite and without touching anything: the file itself, what
 * stands in its write-ahead log, and without what a cut transaction left. It works in a folder that cannot be written
 * in, and beside a process that is writing.
 * @throws What the file system says when a file cannot be read; an error when it never stood still.
 */
export function imageOf(path: string): Buffer {
  for (let tries = 0; tries < TRIES; tries++) {
    const before = signOf(path);
    const log = readIfThere(`${path}-wal`);
    const journal = readIfThere(`${path}-journal`);
    const file = readFileSync(path);
    if (before === signOf(path)) return inOne(rolledBack(file, journal), log);
  }
  throw Object.assign(new Error('The file never stood still'), { code: 'EBUSY', path });
}

/** Opens a file's image in memory: what is written to it stays there. */
export function openImage(path: string): Sqlite {
  const image = imageOf(path);
  return image.length === 0 ? new Database(':memory:') : new Database(image);
}

function inOne(file: Buffer, log: Buffer): Buffer {
  const newer = walPages(log);
  const whole = newer ? Buffer.alloc(newer.count * newer.pageSize) : file;
  if (newer) {
    file.copy(whole, 0, 0, Math.min(file.length, whole.length));
    for (const [page, bytes] of newer.pages) whole.set(bytes, (page - 1) * newer.pageSize);
  }
  // Read and write version 1: the image has no log beside it (section 1.3.3 of the same page).
  if (whole.length >= 100) whole.fill(1, 18, 20);
  return whole;
}

const readIfThere = (path: string): Buffer =>
  statSync(path, { throwIfNoEntry: false }) ? readFileSync(path) : Buffer.alloc(0);

/** Changes whenever the file does, its log is begun anew, or a rollback journal comes or goes. */
function signOf(path: string): string {
  const file = statSync(path, { bigint: true });
  const log = readHead(`${path}-wal`);
  const journal = statSync(`${path}-journal`, { throwIfNoEntry: false, bigint: true });
  return [file.size, file.mtimeNs, log, journal?.size ?? 0n, journal?.mtimeNs ?? 0n].join();
}

function readHead(path: string): string {
  if (!statSync(path, { throwIfNoEntry: false })) return '';
  const head = Buffer.alloc(32);
  const file = openSync(path, 'r');
  try {
    readSync(file, head, 0, head.length, 0);
  } finally {
    closeSync(file);
  }
  return head.toString('hex');
}
