import { existsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { EpochMs } from '../../core/time.ts';
import { keyedDigest, type ShopKeys } from '../seal/shopKeys.ts';
import type { Wallet } from '../seal/wallets/wallet.ts';
import { Refused, refusalFromError } from '../shop/openRefusal.ts';
import { WHOSE_BLOBS } from '../shop/settleLine.ts';
import { type BackupRefusal, BackupRefused } from './backupRefusal.ts';
import {
  type BundleHeader,
  type BundleKind,
  type BundlePart,
  bundleKindOf,
  openBundle,
  writeBundle,
} from './bundle.ts';
import { lastOf, namedFiles, readShop, type ShopImages } from './shopImages.ts';

export type BackupAsked = {
  readonly folder: string;
  readonly branch: string;
  readonly wallet: Wallet;
  readonly clock: () => EpochMs;
  /** Where the backup goes; nothing lies there yet. Null: the key part alone. */
  readonly to: string | null;
  /** Where the key part goes; one of the same shop that lies there is replaced. */
  readonly key: string;
  /** After each piece, how many bytes of the backup were written. */
  readonly told?: (bytes: number) => void;
};

/** What was made. `lacking`: sealed files that entries name and the shop itself has not. */
export type BackupMade = {
  readonly at: EpochMs;
  readonly seq: number;
  readonly files: number;
  readonly lacking: number;
};

/**
 * Makes a backup of a shop while people may work in it: the journal, what is sealed, the sealed files, and no keys in one
 * file; the keys, wrapped, in another, which is replaced whole. The shop's folder is only read.
 * @returns The refusal, when it was not made; then no file is there that was not there before.
 */
export async function makeBackup(asked: BackupAsked): Promise<BackupMade | BackupRefusal> {
  try {
    if (asked.to !== null) mayBeMade(asked.to);
    const images = await readShop(asked.folder, asked.wallet);
    try {
      return bothFiles(asked, images);
    } finally {
      images.journal.close();
      images.keys.close();
    }
  } catch (error) {
    return refusalOf(error, asked.to ?? asked.key);
  }
}

/** @throws {BackupRefused} When a file lies there, or its folder is missing: a disk that is not plugged in is not made up. */
function mayBeMade(path: string): void {
  if (existsSync(path)) throw new BackupRefused({ refused: 'backup-file-there', path });
  placeIsThere(path);
}

function placeIsThere(path: string): void {
  const place = dirname(path);
  if (!statSync(place, { throwIfNoEntry: false })?.isDirectory())
    throw new BackupRefused({ refused: 'backup-place-missing', path: place, code: 'ENOENT' });
}

function bothFiles({ branch, clock, to, key, told }: BackupAsked, images: ShopImages): BackupMade {
  mayBeReplaced(key, images.shop);
  const { seq, hash } = lastOf(images.journal, branch);
  const files = namedFiles(images.journal, images.paths.blobs);
  const lacking = files.filter(({ size }) => size === null).map(({ name }) => name);
  const at = clock();
  const facts = {
    shop: images.shop,
    epoch: images.epoch,
    at,
    seq,
    hash,
    shape: Number(images.journal.pragma('user_version', { simple: true })),
    lacking,
  };
  const keyPart = [{ name: 'keys.db', bytes: images.keys.serialize() }];
  inPlace(key, () =>
    writeBundle(key, 'key-part', headerFor('key-part', { ...facts, lacking: [] }, keyPart, images.shopKeys), keyPart),
  );
  if (to !== null) {
    const parts: readonly BundlePart[] = [
      { name: 'shop.db', bytes: images.journal.serialize() },
      ...files.flatMap(({ name, path, size }) => (size === null ? [] : [{ name, path, size }])),
    ];
    inPlace(to, () => writeBundle(to, 'backup', headerFor('backup', facts, parts, images.shopKeys), parts, told));
  }
  return { at, seq, files: files.length - lacking.length, lacking: lacking.length };
}

/** @throws {BackupRefused} When what lies there is no key part, or another shop's. */
function mayBeReplaced(key: string, shop: string): void {
  placeIsThere(key);
  if (!existsSync(key)) return;
  if (bundleKindOf(key) !== 'key-part') throw new BackupRefused({ refused: 'key-part-file-there', path: key });
  let theirs: string | null = null;
  try {
    const open = openBundle(key, 'key-part');
    theirs = open.header.shop;
    open.close();
  } catch (error) {
    // A damaged key part is what a fresh one is for; one of a newer form may hold what this program cannot write.
    if (error instanceof BackupRefused && error.refusal.refused === 'backup-newer') throw error;
  }
  if (theirs !== null && theirs !== shop) throw new BackupRefused({ refused: 'key-part-of-another-shop', path: key });
}

function headerFor(
  kind: BundleKind,
  facts: Omit<BundleHeader, 'mac' | 'parts'>,
  parts: readonly BundlePart[],
  keys: ShopKeys,
): BundleHeader {
  const header = {
    ...facts,
    parts: parts.map((part) => ({ name: part.name, size: 'bytes' in part ? part.bytes.length : part.size })),
  };
  return { ...header, mac: macOf(kind, header, keys) };
}

/** The shop's own seal over a header. */
function macOf(kind: BundleKind, header: Omit<BundleHeader, 'mac'>, keys: ShopKeys): string {
  return keyedDigest(keys.heads, [kind, header]).toString('hex');
}

/** Was this header written by the shop that these keys belong to? */
export function headerIsGenuine(kind: BundleKind, { mac, ...header }: BundleHeader, keys: ShopKeys): boolean {
  return macOf(kind, header, keys) === mac;
}

/** Errors that a disk gives which was pulled out, or whose folder went. */
const GONE = new Set(['ENOENT', 'ENODEV', 'ENXIO', 'EIO', 'ESTALE', 'ENOTCONN']);

function inPlace(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (GONE.has(code)) throw new BackupRefused({ refused: 'backup-place-gone', path: dirname(path), code });
    throw error;
  }
}

const NOT_READABLE = new Set(['ENOENT', 'EISDIR', 'ENOTDIR', 'ENAMETOOLONG', 'ELOOP']);

/** What stopped a backup's work, as a refusal. @throws A defect as it is. */
export function refusalOf(error: unknown, path: string): BackupRefusal {
  if (error instanceof BackupRefused || error instanceof Refused) return error.refusal;
  const where = error instanceof Error && 'path' in error ? String(error.path) : path;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (NOT_READABLE.has(code)) return { refused: 'file-not-readable', path: where, code };
  const refusal = refusalFromError(error, where);
  if (!refusal) throw error;
  return refusal;
}

/** Whose sealed files these are is written among them. */
export const whoseIn = (blobs: string): string => join(blobs, WHOSE_BLOBS);
