import { closeSync, openSync, readSync, statSync } from 'node:fs';

/** Four bytes in the file's header that say whose file it is: "KnGd" for a shop, "KnKy" for its keys. */
export const SHOP_FILE = 0x4b6e4764;
export const KEY_FILE = 0x4b6e4b79;

/** What a file's first hundred bytes say. Read without SQLite, so that nothing is touched. */
export type FileLook =
  | { readonly is: 'absent' }
  | { readonly is: 'empty' }
  | { readonly is: 'foreign'; readonly begins: string }
  | { readonly is: 'sqlite'; readonly application: number; readonly version: number };

const HEADER_BYTES = 100;
const MAGIC = 'SQLite format 3\0';

/**
 * Looks at a file's header. Source of the offsets: "Database File Format", section 1.3, sqlite.org.
 * @throws What the file system says when the file is there and cannot be read.
 */
export function lookAtFile(path: string): FileLook {
  const size = statSync(path, { throwIfNoEntry: false })?.size;
  if (size === undefined) return { is: 'absent' };
  if (size === 0) return { is: 'empty' };
  const header = Buffer.alloc(HEADER_BYTES);
  const file = openSync(path, 'r');
  try {
    readSync(file, header, 0, HEADER_BYTES, 0);
  } finally {
    closeSync(file);
  }
  if (header.toString('latin1', 0, MAGIC.length) !== MAGIC)
    return { is: 'foreign', begins: header.toString('hex', 0, 8) };
  return { is: 'sqlite', application: header.readUInt32BE(68), version: header.readUInt32BE(60) };
}
