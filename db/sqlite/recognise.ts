import { closeSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { imageOf, openImage } from './image.ts';
import { walPages } from './walPages.ts';

/** Four bytes in the file's header that say whose file it is: "KnGd" for a shop, "KnKy" for its keys. */
export const SHOP_FILE = 0x4b6e4764;
export const KEY_FILE = 0x4b6e4b79;

/** What a file says of itself. Read without SQLite, so that nothing is touched. Empty: a start that was cut short left nothing in it. */
export type FileLook =
  | { readonly is: 'absent' }
  | { readonly is: 'empty' }
  | { readonly is: 'foreign'; readonly begins: string }
  | { readonly is: 'sqlite'; readonly application: number; readonly version: number };

const HEADER_BYTES = 100;
const MAGIC = 'SQLite format 3\0';

/**
 * Looks at a file's header, as its last commit left it: it may stand in the log beside the file only. Source of the
 * offsets: "Database File Format", section 1.3, sqlite.org.
 * @throws What the file system says when the file is there and cannot be read.
 */
export function lookAtFile(path: string): FileLook {
  const size = statSync(path, { throwIfNoEntry: false })?.size;
  if (size === undefined) return { is: 'absent' };
  const header = headerOf(path);
  if (header.length === 0) return { is: 'empty' };
  if (header.toString('latin1', 0, MAGIC.length) !== MAGIC)
    return { is: 'foreign', begins: header.toString('hex', 0, 8) };
  const look: FileLook = { is: 'sqlite', application: header.readUInt32BE(68), version: header.readUInt32BE(60) };
  // A start that was cut short may have marked the file as ours before it made anything in it.
  const unmade = look.version === 0 && [0, SHOP_FILE, KEY_FILE].includes(look.application);
  return unmade && holdsNothing(path) ? { is: 'empty' } : look;
}

const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;

function headerOf(path: string): Buffer {
  if (sizeOf(`${path}-journal`) > 0) return imageOf(path).subarray(0, HEADER_BYTES);
  const newer = sizeOf(`${path}-wal`) > 0 ? walPages(readFileSync(`${path}-wal`))?.pages.get(1) : undefined;
  if (newer) return Buffer.from(newer.subarray(0, HEADER_BYTES));
  const header = Buffer.alloc(HEADER_BYTES);
  const file = openSync(path, 'r');
  try {
    return header.subarray(0, readSync(file, header, 0, HEADER_BYTES, 0));
  } finally {
    closeSync(file);
  }
}

function holdsNothing(path: string): boolean {
  const image = openImage(path);
  try {
    return image.prepare('select count(*) from sqlite_master').pluck().get() === 0;
  } catch {
    return false;
  } finally {
    image.close();
  }
}
