import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import type { Refusal } from '../../core/refusal.ts';
import { DAY_MS } from '../../core/time.ts';
import { seal, unseal } from '../seal/cipher.ts';
import type { NamedKey } from '../seal/keyFile.ts';
import { sha256 } from '../seal/sha256.ts';
import { syncFolder } from '../sqlite/syncFolder.ts';
import { type BlobName, blobNameOf, isBlobName } from './blobName.ts';

/** What no entry names is kept this long: its entry may still be on the way. */
const UNNAMED_KEPT_MS = DAY_MS;

/**
 * A sealed file begins with its key's name, so that it can be opened by itself: length (1 byte), name, sealed bytes.
 * It is complete, synced and under its final name before `putBlob` returns.
 */
export function putBlob(folder: string, bytes: Uint8Array, { id, key }: NamedKey): BlobName {
  const keyName = Buffer.from(id, 'utf8');
  const content = Buffer.concat([Buffer.from([keyName.length]), keyName, seal(key, bytes, aboutBlob(id))]);
  const name = blobNameOf(sha256(content));
  const path = blobPath(folder, name);
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const partial = `${path}.part`;
  try {
    writeSynced(partial, content);
    renameSync(partial, path);
  } catch (error) {
    rmSync(partial, { force: true });
    throw error;
  }
  syncFolder(dirname(path));
  return name;
}

/** A blob's bytes, or why they cannot be had: it is missing, damaged, or its key was destroyed. */
export function getBlob(
  folder: string,
  name: BlobName,
  keyOf: (id: string) => Uint8Array | null,
): Uint8Array | Refusal {
  if (!isBlobName(name)) return { refused: 'no-such-blob', blob: name };
  const path = blobPath(folder, name);
  if (!existsSync(path)) return { refused: 'blob-missing', blob: name };
  const content = readFileSync(path);
  if (blobNameOf(sha256(content)) !== name) return { refused: 'blob-damaged', blob: name };
  const length = content[0] ?? 0;
  const id = content.toString('utf8', 1, 1 + length);
  const key = keyOf(id);
  if (!key) return { refused: 'blob-erased', blob: name };
  return unseal(key, content.subarray(1 + length), aboutBlob(id)) ?? { refused: 'blob-damaged', blob: name };
}

export const hasBlob = (folder: string, name: BlobName): boolean => existsSync(blobPath(folder, name));

/** Removes one sealed file; one that the disk keeps for now is swept like any that nothing names. */
export function dropBlob(folder: string, name: BlobName): void {
  try {
    rmSync(blobPath(folder, name), { force: true });
  } catch {
    // A disk that may only be read: nothing was asked that could not wait.
  }
}

/**
 * Removes files that are not named and that are older than a day, half-written ones too: older both by the clock and by
 * the shop's own last work, so that neither a weekend nor a clock that is ahead takes what was just being written.
 * @param lastWork When the last entry was written.
 * @returns How many went.
 */
export function sweepBlobs(folder: string, named: ReadonlySet<string>, now: number, lastWork: number): number {
  if (!existsSync(folder)) return 0;
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /^[0-9a-f]{64}/.test(entry.name))
    .map(({ parentPath, name }) => ({ name, path: join(parentPath, name) }))
    .map((file) => ({ ...file, written: statSync(file.path).mtimeMs }));
  const newest = files.reduce((latest, { written }) => Math.max(latest, written), lastWork);
  const before = Math.min(now, newest) - UNNAMED_KEPT_MS;
  let swept = 0;
  for (const { name, path, written } of files) {
    if (named.has(`blob:${name}`) || written > before) continue;
    rmSync(path, { force: true });
    swept += 1;
  }
  return swept;
}

const aboutBlob = (id: string) => `${id}\nblob`;

function blobPath(folder: string, name: BlobName): string {
  const hex = name.slice('blob:'.length);
  return join(folder, hex.slice(0, 2), hex);
}

function writeSynced(path: string, content: Uint8Array): void {
  const file = openSync(path, 'w', 0o600);
  try {
    let written = 0;
    while (written < content.length) written += writeSync(file, content, written);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
