import { randomBytes } from 'node:crypto';
import { readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import type { NewId } from '../../core/ids.ts';
import { migrate } from '../migrations/migrate.ts';
import type { ShopTables } from '../schema.ts';
import { freshKey } from '../seal/cipher.ts';
import { openKeySqlite } from '../seal/keyFile.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { kyselyOn, openWriter } from '../sqlite/connection.ts';
import { SHOP_FILE } from '../sqlite/recognise.ts';
import { syncFolder } from '../sqlite/syncFolder.ts';
import { Refused } from './openRefusal.ts';
import type { ShopPaths } from './paths.ts';

/** A name for one stretch of a shop's life: everything that belongs together bears it. */
export const freshEpoch = (): string => randomBytes(8).toString('hex');

const COMPANIONS = ['', '-wal', '-shm', '-journal'];
/** Where a file is made until it is whole. */
export const partialOf = (path: string) => `${path}.new`;

/** Removes what a start that was cut short left. The caller holds the folder's lock. */
export function clearPartial(path: string): void {
  for (const companion of COMPANIONS) rmSync(`${partialOf(path)}${companion}`, { force: true });
}

/**
 * Makes a shop's key file: a fresh key for the shop, wrapped, its name and epoch. Under its own name the file is whole
 * or not there at all.
 * @throws {Refused} When the wallet refuses.
 */
export async function makeKeyFile(paths: ShopPaths, wallet: Wallet, ids: NewId): Promise<void> {
  clearPartial(paths.keys);
  const wrapped = await wallet.wrap(freshKey());
  if (isWalletRefusal(wrapped)) throw new Refused({ ...wrapped, path: wrapped.path ?? paths.keys });
  const keys = openKeySqlite(partialOf(paths.keys), true);
  try {
    const put = keys.prepare('insert into meta (name, value) values (?, ?)');
    keys.transaction(() => {
      put.run('shop-id', Buffer.from(ids(), 'utf8'));
      put.run('epoch', Buffer.from(freshEpoch(), 'utf8'));
      put.run('shop-key', Buffer.from(wrapped));
    })();
  } finally {
    keys.close();
  }
  putInPlace(paths.keys);
}

/** Makes an empty shop's file in its newest shape; under its own name it is whole or not there at all. */
export async function makeShopFile(paths: ShopPaths, shopId: string, epoch: string): Promise<void> {
  clearPartial(paths.shop);
  const sqlite = openWriter(partialOf(paths.shop));
  try {
    sqlite.pragma(`application_id = ${SHOP_FILE}`);
    const db = kyselyOn<ShopTables>(sqlite);
    await migrate(sqlite, db, paths.snapshots);
    await db
      .insertInto('meta')
      .values([
        { name: 'shop-id', value: shopId },
        { name: 'epoch', value: epoch },
        { name: 'keys-made', value: '0' },
      ])
      .execute();
    sqlite.pragma('wal_checkpoint(TRUNCATE)');
  } finally {
    sqlite.close();
  }
  putInPlace(paths.shop);
}

/**
 * Gives a file that is whole its own name, and makes that last. What an emptier file of that name left beside it goes
 * first: SQLite would take it for this one's.
 */
export function putInPlace(path: string): void {
  for (const companion of COMPANIONS.slice(1)) rmSync(`${path}${companion}`, { force: true });
  renameSync(partialOf(path), path);
  syncFolder(dirname(path));
}

/** How many files lie in a folder, however deep; 0 where there is none. */
export function filesIn(folder: string): number {
  if (!statSync(folder, { throwIfNoEntry: false })) return 0;
  return readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).length;
}
