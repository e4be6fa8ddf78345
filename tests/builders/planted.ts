import Database from 'better-sqlite3';
import { chainHash, entryBytes } from '../../core/journal/chain.ts';
import type { Json } from '../../core/journal/entry.ts';
import { parseStored, type StoredEntry } from '../../db/journal/readEntry.ts';
import { sha256 } from '../../db/seal/sha256.ts';

type Stored = { readonly seq: number; readonly bytes: Buffer; readonly hash: Buffer };

/**
 * Chains an entry to the end of a shop's journal as no door of ours would: below everything that decides, with every link
 * and count as it should be. It is made from one of the stream's own entries, so that what is sealed in it stays genuine.
 * @param like Which of the stream's own entries, from 1.
 * @returns Its number.
 */
export function planted(
  path: string,
  stream: string,
  make: (own: StoredEntry) => Partial<Pick<StoredEntry, 'kind' | 'v' | 'body'>>,
  like = 1,
): number {
  const sqlite = new Database(path);
  try {
    const last = sqlite.prepare('select seq, bytes, hash from journal order by seq desc limit 1').get() as Stored;
    const own = sqlite
      .prepare('select bytes from journal where stream = ? and stream_seq = ?')
      .pluck()
      .get(stream, like) as Buffer;
    const count = Number(sqlite.prepare('select max(stream_seq) from journal where stream = ?').pluck().get(stream));
    const old = parseStored(own);
    const command = `planted-${last.seq + 1}` as StoredEntry['command'];
    const entry: StoredEntry = { ...old, ...make(old), seq: last.seq + 1, streamSeq: count + 1, command };
    const bytes = Buffer.from(entryBytes(entry));
    const hash = Buffer.from(chainHash(last.hash, bytes, sha256));
    const { branch, seq, streamSeq, at, by, device, kind, v } = entry;
    sqlite
      .prepare(`insert into journal values (${Array(13).fill('?').join(', ')})`)
      .run(branch, seq, stream, streamSeq, at, by, device, command, kind, v, bytes, last.hash, hash);
    sqlite
      .prepare('insert into command values (?, ?, ?, ?, ?, ?, null)')
      .run(branch, command, Buffer.alloc(32), seq, seq, stream);
    return seq;
  } finally {
    sqlite.close();
  }
}

/** A body with one field more than its shape has. */
export const withMore = ({ body }: StoredEntry): { readonly body: Json } => ({
  body: { ...(body as { readonly [field: string]: Json }), more: 'than its shape' },
});

/** Statements that change two of a stream's entries about, hashes and all. */
export function swapped(path: string, stream: string): { readonly statements: string; readonly first: number } {
  const sqlite = new Database(path, { readonly: true });
  const [a = 0, b = 0] = sqlite
    .prepare('select seq from journal where stream = ? order by seq limit 2')
    .pluck()
    .all(stream) as number[];
  sqlite.close();
  const free = 1_000_000;
  return {
    first: a,
    statements: `update journal set seq = ${free} where seq = ${a};
      update journal set seq = ${a} where seq = ${b};
      update journal set seq = ${b} where seq = ${free}`,
  };
}
