import { statSync } from 'node:fs';
import { join } from 'node:path';
import { blobsIn } from '../journal/storedBytes.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import { KEY_BYTES } from '../seal/cipher.ts';
import { KeyFile, shapedInMemory } from '../seal/keyFile.ts';
import { type ShopKeys, shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { type ShopPaths, shopPaths } from '../shop/paths.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { openImage } from '../sqlite/image.ts';
import { KEY_FILE, lookAtFile, SHOP_FILE } from '../sqlite/recognise.ts';
import { BackupRefused } from './backupRefusal.ts';

/** A shop's files as they stood at one moment, read beside the service that has them open. Close both when done. */
export type ShopImages = {
  readonly paths: ShopPaths;
  readonly journal: Sqlite;
  readonly keys: Sqlite;
  readonly keyFile: KeyFile;
  readonly shopKeys: ShopKeys;
  readonly shop: string;
  readonly epoch: string;
};

/**
 * Reads a shop's journal and then its keys, so that every key the journal names is among them. Nothing is written.
 * @throws {BackupRefused} When there is no shop, or its wallet does not open it.
 */
export async function readShop(folder: string, wallet: Wallet): Promise<ShopImages> {
  const paths = shopPaths(folder);
  if (!statSync(paths.shop, { throwIfNoEntry: false })?.size)
    throw new BackupRefused({ refused: 'no-shop', path: folder });
  const look = lookAtFile(paths.shop);
  if (look.is === 'foreign' || (look.is === 'sqlite' && look.application !== SHOP_FILE))
    throw new BackupRefused({
      refused: 'foreign-file',
      path: paths.shop,
      found: look.is === 'foreign' ? look.begins : look.application.toString(16),
    });
  if (look.is === 'sqlite' && look.version > NEWEST_VERSION)
    throw new BackupRefused({ refused: 'newer-version', path: paths.shop, file: look.version, ours: NEWEST_VERSION });
  const journal = openImage(paths.shop);
  try {
    const { keys, keyFile, shopKeys } = await readKeyFile(paths.keys, wallet);
    const shop = keyFile.note('shop-id') ?? '';
    return { paths, journal, keys, keyFile, shopKeys, shop, epoch: keyFile.note('epoch') ?? '' };
  } catch (error) {
    journal.close();
    throw error;
  }
}

/**
 * A key file in memory, opened by its wallet.
 * @throws {BackupRefused} When it is missing or no key file, or the wallet refuses.
 */
export async function readKeyFile(
  path: string,
  wallet: Wallet,
): Promise<Pick<ShopImages, 'keys' | 'keyFile' | 'shopKeys'>> {
  const look = lookAtFile(path);
  if (look.is !== 'sqlite' || look.application !== KEY_FILE) throw new BackupRefused({ refused: 'keys-missing', path });
  const keys = shapedInMemory(openImage(path));
  const wrapped = keys.prepare(`select value from meta where name = 'shop-key'`).pluck().get();
  const opened = wrapped instanceof Uint8Array ? await wallet.unwrap(wrapped) : null;
  if (!opened || isWalletRefusal(opened) || opened.length !== KEY_BYTES) {
    keys.close();
    throw new BackupRefused(
      opened && isWalletRefusal(opened)
        ? { ...opened, path: opened.path ?? path }
        : { refused: 'wallet-opens-another-shop', path },
    );
  }
  const shopKeys = shopKeysFrom(opened);
  return { keys, keyFile: new KeyFile(keys, shopKeys.wrapping), shopKeys };
}

/** A shop's name for itself, read beside whoever has it open; null where there is none. @throws What the file system says. */
export function shopIdIn(folder: string): string | null {
  const { keys } = shopPaths(folder);
  if (lookAtFile(keys).is !== 'sqlite') return null;
  const image = openImage(keys);
  try {
    const value = image.prepare(`select value from meta where name = 'shop-id'`).pluck().get();
    return value instanceof Uint8Array ? Buffer.from(value).toString('utf8') : null;
  } finally {
    image.close();
  }
}

/** Will a start bring this shop's file to a newer shape? */
export function needsMigration(folder: string): boolean {
  const look = lookAtFile(shopPaths(folder).shop);
  return look.is === 'sqlite' && look.application === SHOP_FILE && look.version > 0 && look.version < NEWEST_VERSION;
}

/** Names in the journal's image of sealed files, each with where it lies. */
export function namedFiles(
  journal: Sqlite,
  blobs: string,
): readonly { readonly name: string; readonly path: string; readonly size: number | null }[] {
  const named = new Set<string>();
  for (const bytes of journal.prepare('select bytes from journal').pluck().iterate()) {
    if (!(bytes instanceof Uint8Array)) continue;
    for (const blob of blobsIn(bytes)) named.add(blob.slice('blob:'.length));
  }
  return [...named].sort().map((hex) => {
    const path = join(blobs, hex.slice(0, 2), hex);
    return {
      name: `blobs/${hex.slice(0, 2)}/${hex}`,
      path,
      size: statSync(path, { throwIfNoEntry: false })?.size ?? null,
    };
  });
}

/** The last entry of a branch in a journal's image. */
export function lastOf(
  journal: Sqlite,
  branch: string,
): { readonly seq: number; readonly hash: string; readonly at: number } {
  const row = journal
    .prepare<[string], { seq: number; hash: Uint8Array; at: number }>(
      'select seq, hash, at from journal where branch = ? order by seq desc limit 1',
    )
    .get(branch);
  return row
    ? { seq: row.seq, hash: Buffer.from(row.hash).toString('hex'), at: row.at }
    : { seq: 0, hash: '0'.repeat(64), at: 0 };
}
