import { createHash } from 'node:crypto';
import { closeSync, fstatSync, fsyncSync, openSync, readSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { epochMs } from '../../core/time.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import { syncFolder } from '../sqlite/syncFolder.ts';
import { BackupRefused } from './backupRefusal.ts';

/** What such a file is: everything but keys, or the keys. */
export type BundleKind = 'backup' | 'key-part';

/** The first line of each: what it is, the version of its form, the length of its header in bytes. */
const FIRST_LINE = /^knowngood (backup|key part) (\d{1,4}) (\d{1,9})\n/;
const NAMES: Readonly<Record<BundleKind, string>> = { backup: 'backup', 'key-part': 'key part' };
const BUNDLE_VERSION = 1;
const FIRST_LINE_MOST = 64;
const HEADER_MOST = 2 ** 28;
const DIGEST_BYTES = 32;
const CHUNK = 2 ** 20;

const zPart = z.strictObject({
  name: z.string().regex(/^(shop\.db|keys\.db|blobs\/[0-9a-f]{2}\/[0-9a-f]{64})$/),
  size: z.int().min(0),
});
const zHeader = z.strictObject({
  /** The shop's name for itself, and the stretch of its life. */
  shop: z.string().min(1).max(200),
  epoch: z.string().max(200),
  /** When it was made, by the clock of the computer that made it. */
  at: z.int().transform(epochMs),
  /** The last entry in it, or that was acknowledged by then, and its hash. */
  seq: z.int().min(0),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  /** The shape of the journal's file. */
  shape: z.int().min(0),
  /** Sealed files that entries name and that were not there. */
  lacking: z.array(z.string()),
  parts: z.array(zPart),
  /** The shop's own seal over all of the above. */
  mac: z.string(),
});
export type BundleHeader = z.infer<typeof zHeader>;

/** A part to be written: its bytes, or where they lie. */
export type BundlePart =
  | { readonly name: string; readonly bytes: Uint8Array }
  | { readonly name: string; readonly path: string; readonly size: number };

/**
 * Writes such a file: a line that says what it is, a header in canonical JSON (RFC 8785), its parts one after the other, and
 * the SHA-256 of everything before. Under its own name it is whole or not there at all; what lay there before stays until then.
 * @param told After each piece, how many bytes were written.
 * @throws What the file system says.
 */
export function writeBundle(
  path: string,
  kind: BundleKind,
  header: BundleHeader,
  parts: readonly BundlePart[],
  told: (bytes: number) => void = () => undefined,
): void {
  const text = Buffer.from(`${canonicalJson({ ...header, at: Number(header.at) })}\n`, 'utf8');
  const first = Buffer.from(`knowngood ${NAMES[kind]} ${BUNDLE_VERSION} ${text.length}\n`, 'utf8');
  const partial = `${path}.new`;
  try {
    const file = openSync(partial, 'w', 0o600);
    try {
      const digest = createHash('sha256');
      let written = 0;
      const put = (bytes: Uint8Array) => {
        for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
        digest.update(bytes);
        written += bytes.length;
        told(written);
      };
      put(first);
      put(text);
      for (const part of parts) for (const piece of piecesOf(part)) put(piece);
      const sum = digest.digest();
      writeSync(file, sum, 0, sum.length);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(partial, path);
  } catch (error) {
    rmSync(partial, { force: true });
    throw error;
  }
  syncFolder(dirname(path));
}

function* piecesOf(part: BundlePart): Iterable<Uint8Array> {
  if ('bytes' in part) {
    for (let at = 0; at < part.bytes.length; at += CHUNK) yield part.bytes.subarray(at, at + CHUNK);
    return;
  }
  const file = openSync(part.path, 'r');
  try {
    yield* rangeOf(file, 0, part.size);
  } finally {
    closeSync(file);
  }
}

function* rangeOf(file: number, from: number, length: number): Iterable<Uint8Array> {
  for (let at = 0; at < length; ) {
    const piece = Buffer.alloc(Math.min(CHUNK, length - at));
    const got = readSync(file, piece, 0, piece.length, from + at);
    if (got === 0) throw Object.assign(new Error('The file ends early'), { code: 'EIO' });
    at += got;
    yield piece.subarray(0, got);
  }
}

/** What a file is by its content; null when it is neither. @throws What the file system says. */
export function bundleKindOf(path: string): BundleKind | null {
  const file = openSync(path, 'r');
  try {
    return readFirstLine(file)?.kind ?? null;
  } finally {
    closeSync(file);
  }
}

function readFirstLine(file: number) {
  const bytes = Buffer.alloc(FIRST_LINE_MOST);
  const got = readSync(file, bytes, 0, bytes.length, 0);
  const [line, name, version, length] = FIRST_LINE.exec(bytes.toString('latin1', 0, got)) ?? [];
  if (line === undefined) return null;
  const kind: BundleKind = name === NAMES.backup ? 'backup' : 'key-part';
  return { kind, version: Number(version), starts: line.length, length: Number(length) };
}

/** A whole file of this kind, opened for reading. */
export type OpenBundle = {
  readonly header: BundleHeader;
  /** A part's bytes, piece by piece. */
  readonly read: (name: string) => Iterable<Uint8Array>;
  readonly close: () => void;
};

/**
 * Opens such a file, once all of its bytes were held against its own digest.
 * @throws {BackupRefused} When it is something else, of a newer form, cut, or not as it was written.
 */
export function openBundle(
  path: string,
  kind: BundleKind,
  told: (bytes: number) => void = () => undefined,
): OpenBundle {
  const file = openSync(path, 'r');
  try {
    const header = headerOf(file, path, kind);
    const starts = new Map<string, { readonly from: number; readonly size: number }>();
    let at = header.ends;
    for (const { name, size } of header.header.parts) {
      starts.set(name, { from: at, size });
      at += size;
    }
    holdAgainstDigest(file, path, kind, at, told);
    return {
      header: header.header,
      read: (name) => {
        const part = starts.get(name);
        return part ? rangeOf(file, part.from, part.size) : [];
      },
      close: () => closeSync(file),
    };
  } catch (error) {
    closeSync(file);
    throw error;
  }
}

function headerOf(
  file: number,
  path: string,
  kind: BundleKind,
): { readonly header: BundleHeader; readonly ends: number } {
  const size = fstatSync(file).size;
  const first = readFirstLine(file);
  if (!first || first.kind !== kind)
    throw new BackupRefused({ refused: kind === 'backup' ? 'not-a-backup' : 'not-a-key-part', path });
  if (first.version > BUNDLE_VERSION)
    throw new BackupRefused({ refused: 'backup-newer', path, file: first.version, ours: BUNDLE_VERSION });
  const ends = first.starts + first.length;
  if (size < ends + DIGEST_BYTES)
    throw new BackupRefused({ refused: 'backup-cut', path, size, whole: ends + DIGEST_BYTES });
  if (first.length > HEADER_MOST) throw new BackupRefused({ refused: 'backup-changed', path, kind });
  const header = parsedHeader(file, first, path, kind);
  if (header.shape > NEWEST_VERSION)
    throw new BackupRefused({ refused: 'backup-newer', path, file: header.shape, ours: NEWEST_VERSION });
  return { header, ends };
}

function parsedHeader(
  file: number,
  first: { readonly starts: number; readonly length: number },
  path: string,
  kind: BundleKind,
): BundleHeader {
  try {
    const text = Buffer.concat([...rangeOf(file, first.starts, first.length)]).toString('utf8');
    return zHeader.parse(JSON.parse(text));
  } catch {
    throw new BackupRefused({ refused: 'backup-changed', path, kind });
  }
}

function holdAgainstDigest(
  file: number,
  path: string,
  kind: BundleKind,
  ends: number,
  told: (bytes: number) => void,
): void {
  const { size } = fstatSync(file);
  if (size < ends + DIGEST_BYTES)
    throw new BackupRefused({ refused: 'backup-cut', path, size, whole: ends + DIGEST_BYTES });
  const digest = createHash('sha256');
  let looked = 0;
  for (const piece of rangeOf(file, 0, ends)) {
    digest.update(piece);
    looked += piece.length;
    told(looked);
  }
  const kept = Buffer.concat([...rangeOf(file, ends, size - ends)]);
  if (!digest.digest().equals(kept)) throw new BackupRefused({ refused: 'backup-changed', path, kind });
}
