import { randomBytes } from 'node:crypto';
import { statSync } from 'node:fs';
import Database from 'better-sqlite3';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { tableDigest } from '../projections/rowSums.ts';
import { KeyFile, shapedInMemory } from '../seal/keyFile.ts';
import { type ShopKeys, shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { openImage } from '../sqlite/image.ts';
import { assembleShop } from './assembleShop.ts';
import { noMarks } from './marks.ts';
import type { OpenRefusal } from './openRefusal.ts';
import type { OpenOptions } from './openShop.ts';
import { type ShopPaths, shopPaths } from './paths.ts';
import { copyRows, salvage } from './salvage.ts';
import type { OpenShop } from './shop.ts';

/** Refusals after which there is something of the shop to read, and nothing that a person must put right first. */
const READABLE: ReadonlySet<OpenRefusal['refused']> = new Set([
  'damaged-file',
  'folder-not-writable',
  'disk-full',
  'disk-failing',
  'keys-missing',
  'wallet-file-missing',
  'wallet-file-damaged',
  'entries-missing',
  'another-journal',
  'sealed-head-forged',
  'keys-older-than-journal',
  'files-of-two-ages',
  'blobs-of-another-shop',
]);

/**
 * Opens what is good of a shop that cannot be opened to be written, to be read only. It works on images in memory:
 * nothing in the folder is touched, nothing is sealed, every command is refused. Without the keys, personal values read
 * as if they had been erased.
 * @param why Why it was not opened: `standing` says it on.
 * @param beside Read beside another process that has the shop open, too.
 * @returns The same refusal where there is nothing to read.
 */
export async function openToRead(
  options: OpenOptions,
  why: OpenRefusal,
  { beside = false } = {},
): Promise<OpenShop | OpenRefusal> {
  if (!READABLE.has(why.refused) && !(beside && why.refused === 'held-by-another')) return why;
  const paths = shopPaths(options.folder);
  if (!statSync(paths.shop, { throwIfNoEntry: false })?.size) return why;
  const { keyFile, shopKeys } = await readKeys(paths, options.wallet);
  const sqlite = await readJournal(paths, options.branch, keyFile, shopKeys);
  if (!sqlite) return why;
  const opened = { paths, shopKeys, keyFile, sqlite, readingSqlite: sqlite, marks: noMarks, notices: [] };
  return assembleShop(options, { ...opened, onlyRead: why, releaseLock: () => undefined });
}

/** The keys as far as file and wallet give them; keys that open nothing where they do not. */
export async function readKeys(
  paths: ShopPaths,
  wallet: Wallet,
): Promise<{ readonly keyFile: KeyFile; readonly shopKeys: ShopKeys; readonly whole: boolean }> {
  try {
    const sqlite = wholeOrSalvaged(openImage(paths.keys));
    const wrapped = sqlite.prepare(`select value from meta where name = 'shop-key'`).pluck().get();
    const opened = wrapped instanceof Uint8Array ? await wallet.unwrap(wrapped) : null;
    if (opened && !isWalletRefusal(opened)) {
      const shopKeys = shopKeysFrom(opened);
      return { keyFile: new KeyFile(sqlite, shopKeys.wrapping), shopKeys, whole: true };
    }
  } catch {
    // A key file that cannot be read opens nothing, as one that is not there.
  }
  const shopKeys = shopKeysFrom(randomBytes(32));
  return { keyFile: new KeyFile(shapedInMemory(new Database(':memory:')), shopKeys.wrapping), shopKeys, whole: false };
}

/** A key file's image; of one that is damaged every row that can be read. */
function wholeOrSalvaged(image: Sqlite): Sqlite {
  if (isWhole(image)) return shapedInMemory(image);
  const saved = shapedInMemory(new Database(':memory:'));
  for (const table of ['meta', 'key', 'erased', 'lost', 'head']) copyRows(image, saved, table);
  image.close();
  return saved;
}

function isWhole(image: Sqlite): boolean {
  try {
    return image.pragma('quick_check(1)', { simple: true }) === 'ok';
  } catch {
    return false;
  }
}

/** The journal with its read tables: the file's own image where all of it holds together, else what can be salvaged. */
async function readJournal(
  paths: ShopPaths,
  branch: string,
  keyFile: KeyFile,
  shopKeys: ShopKeys,
): Promise<Sqlite | null> {
  try {
    const image = openImage(paths.shop);
    if (holdsTogether(image, shopKeys.tables)) return image;
    const tools = { keyOf: (id: string) => keyFile.open(id), searchKey: shopKeys.search, tableKey: shopKeys.tables };
    const saved = await salvage(image, branch, tools);
    image.close();
    return Number(saved.prepare('select count(*) from journal').pluck().get()) > 0 ? saved : null;
  } catch {
    return null;
  }
}

function holdsTogether(image: Sqlite, tableKey: Uint8Array): boolean {
  try {
    if (Number(image.pragma('user_version', { simple: true })) !== NEWEST_VERSION) return false;
    if (image.pragma('quick_check(1)', { simple: true }) !== 'ok') return false;
    const kept = image.prepare('select digest from read_table where name = ?').pluck();
    const behind = image.prepare('select count(*) from projection where name = ? and version = ?').pluck();
    return PROJECTIONS.every(
      ({ name, version, tables }) =>
        behind.get(name, version) === 1 &&
        tables.every((spec) => kept.get(spec.name) === tableDigest(image, spec, tableKey)),
    );
  } catch {
    return false;
  }
}
