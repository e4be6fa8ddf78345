import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { textOfStored } from '../../db/journal/storedBytes.ts';

/** A file with everything that can be read from it by whoever has it in hand. */
export type FileInHand = { readonly name: string; readonly path: string; readonly bytes: Buffer };

/** Every file of a folder and of those in it: its bytes, and after them, where it is a journal, its entries unpacked. */
export const filesIn = (folder: string): readonly FileInHand[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => {
      const path = join(parentPath, name);
      return { name, path, bytes: Buffer.concat([readFileSync(path), Buffer.from(entriesIn(path))]) };
    });

/** All that lies in a folder's files, letter by letter. */
export const textIn = (folder: string): string =>
  filesIn(folder)
    .map(({ bytes }) => bytes.toString('latin1'))
    .join('\n');

function entriesIn(path: string): string {
  // Whoever has the shop open keeps its keys to itself.
  if (!path.endsWith('.db') || path.endsWith('keys.db')) return '';
  const file = new Database(path, { readonly: true });
  try {
    if (!file.prepare(`select 1 from sqlite_master where name = 'journal'`).get()) return '';
    return file
      .prepare<[], Uint8Array>('select bytes from journal')
      .pluck()
      .all()
      .map((bytes) => textOfStored(bytes))
      .join('\n');
  } finally {
    file.close();
  }
}
