/** Pages that commands wrote to the log beside a file and that are not in the file yet. */
export type WalPages = {
  readonly pageSize: number;
  /** The newest committed content of each page, by its number from 1. */
  readonly pages: ReadonlyMap<number, Uint8Array>;
  /** Pages of the whole database after the last commit. */
  readonly count: number;
};

const HEADER_BYTES = 32;
const FRAME_HEADER_BYTES = 24;
const BIG_ENDIAN_MAGIC = 0x377f0683;
const LITTLE_ENDIAN_MAGIC = 0x377f0682;

/**
 * What a write-ahead log holds: its frames as far as their salts and checksums hold, up to the last commit. A log that
 * is cut or damaged gives what stands before that place, exactly as SQLite itself recovers it.
 * Source: "Database File Format", section 4, sqlite.org.
 * @returns Null when the log holds no commit.
 */
export function walPages(log: Buffer): WalPages | null {
  if (log.length < HEADER_BYTES) return null;
  const magic = log.readUInt32BE(0);
  if (magic !== BIG_ENDIAN_MAGIC && magic !== LITTLE_ENDIAN_MAGIC) return null;
  const word = magic === BIG_ENDIAN_MAGIC ? (at: number) => log.readUInt32BE(at) : (at: number) => log.readUInt32LE(at);
  const pageSize = log.readUInt32BE(8);
  if (pageSize < 512) return null;
  let sums = sumOn([0, 0], word, 0, 24);
  if (sums[0] !== log.readUInt32BE(24) || sums[1] !== log.readUInt32BE(28)) return null;
  const committed = new Map<number, Uint8Array>();
  const pending = new Map<number, Uint8Array>();
  let count = 0;
  for (let at = HEADER_BYTES; at + FRAME_HEADER_BYTES + pageSize <= log.length; at += FRAME_HEADER_BYTES + pageSize) {
    if (log.compare(log, 16, 24, at + 8, at + 16) !== 0) break;
    sums = sumOn(sumOn(sums, word, at, 8), word, at + FRAME_HEADER_BYTES, pageSize);
    if (sums[0] !== log.readUInt32BE(at + 16) || sums[1] !== log.readUInt32BE(at + 20)) break;
    pending.set(log.readUInt32BE(at), log.subarray(at + FRAME_HEADER_BYTES, at + FRAME_HEADER_BYTES + pageSize));
    const after = log.readUInt32BE(at + 4);
    if (after === 0) continue;
    for (const [page, bytes] of pending) committed.set(page, bytes);
    pending.clear();
    count = after;
  }
  return count === 0 ? null : { pageSize, pages: committed, count };
}

type Sums = readonly [number, number];

function sumOn(from: Sums, word: (at: number) => number, start: number, bytes: number): Sums {
  let [first, second] = from;
  for (let at = start; at < start + bytes; at += 8) {
    first = (first + word(at) + second) >>> 0;
    second = (second + word(at + 4) + first) >>> 0;
  }
  return [first, second];
}
