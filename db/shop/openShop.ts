import { randomUUID } from 'node:crypto';
import { accessSync, constants, mkdirSync, statSync } from 'node:fs';
import type { Kysely } from 'kysely';
import type { NewId } from '../../core/ids.ts';
import type { EpochMs } from '../../core/time.ts';
import type { Log } from '../log/log.ts';
import { word } from '../log/log.ts';
import { migrate } from '../migrations/migrate.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import type { ShopTables } from '../schema.ts';
import { freshKey, KEY_BYTES } from '../seal/cipher.ts';
import { KEY_FILE_VERSION, KeyFile, openKeySqlite } from '../seal/keyFile.ts';
import { type ShopKeys, shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { kyselyOn, openReader, openWriter, type Sqlite } from '../sqlite/connection.ts';
import { type FileLook, KEY_FILE, lookAtFile, SHOP_FILE } from '../sqlite/recognise.ts';
import { assembleShop } from './assembleShop.ts';
import { checkUndamaged } from './checkUndamaged.ts';
import { takeLock } from './lockFile.ts';
import { type OpenRefusal, Refused, refusalFromError } from './openRefusal.ts';
import { type ShopPaths, shopPaths } from './paths.ts';
import type { Shop } from './shop.ts';

export type OpenOptions = {
  /** Where the shop lies; made when it is not there. */
  readonly folder: string;
  /** The branch of the shop whose chain is written here. */
  readonly branch: string;
  readonly clock: () => EpochMs;
  readonly wallet: Wallet;
  readonly log: Log;
  /** Fresh ids; random by default. */
  readonly ids?: NewId;
};

/** Was the shop opened, or refused? */
export const isOpenRefusal = (opened: Shop | OpenRefusal): opened is OpenRefusal => 'refused' in opened;

/**
 * Opens a shop's folder for this process alone, or says why not; then nothing in it was touched. A new folder becomes
 * a new shop. An older file is copied to `snapshots` and brought to the newest shape.
 */
export async function openShop(options: OpenOptions): Promise<Shop | OpenRefusal> {
  const paths = shopPaths(options.folder);
  const undo: (() => unknown)[] = [];
  try {
    return await open(options, paths, undo);
  } catch (error) {
    for (const step of undo.reverse()) await step();
    const refusal = error instanceof Refused ? error.refusal : refusalFromError(error, pathOf(error) ?? paths.folder);
    if (!refusal) throw error;
    options.log('not-opened', { refused: word(refusal.refused) });
    return refusal;
  }
}

async function open(
  { branch, clock, wallet, log, ids = randomUUID }: OpenOptions,
  paths: ShopPaths,
  undo: (() => unknown)[],
): Promise<Shop> {
  mkdirSync(paths.folder, { recursive: true });
  accessSync(paths.folder, constants.W_OK | constants.R_OK);
  const shopFile = recogniseFile(paths.shop, SHOP_FILE, NEWEST_VERSION);
  const keysFile = recogniseFile(paths.keys, KEY_FILE, KEY_FILE_VERSION);
  const shopIsNew = isNew(shopFile);
  if (!shopIsNew && isNew(keysFile)) throw new Refused({ refused: 'keys-missing', path: paths.keys });
  const lock = takeLock(paths.lock, clock());
  undo.push(lock.release);
  if (lock.stale) log('stale-lock-taken-over', { pid: lock.stale.pid });
  const keys = inPath(paths.keys, () => openKeySqlite(paths.keys, isNew(keysFile)));
  undo.push(() => keys.close());
  if (!shopIsNew) checkUndamaged(paths.shop);
  const shopKeys = await openShopKey(keys, wallet, paths.keys, ids);
  const keyFile = new KeyFile(keys, shopKeys.wrapping);

  const sqlite = openShopFile(paths.shop, shopIsNew);
  undo.push(() => sqlite.open && sqlite.close());
  const db = kyselyOn<ShopTables>(sqlite);
  const migrated = await migrate(sqlite, db, paths.snapshots);
  if (migrated.from !== migrated.to) log('migrated', { from: migrated.from, to: migrated.to });
  await checkSameShop(db, keys, paths.keys);
  const reading = openReader(paths.shop);
  undo.push(() => reading.open && reading.close());
  return assembleShop({
    branch,
    clock,
    log,
    paths,
    shopKeys,
    keyFile,
    sqlite,
    db,
    readingSqlite: reading,
    reading: kyselyOn<ShopTables>(reading),
    releaseLock: lock.release,
  });
}

const isNew = (look: FileLook) => look.is === 'absent' || look.is === 'empty';

/** Looks at a file by its header alone: another program's, or one of a newer version of ours, is left alone. */
function recogniseFile(path: string, application: number, newest: number): FileLook {
  const look = inPath(path, () => lookAtFile(path));
  if (look.is === 'foreign') throw new Refused({ refused: 'foreign-file', path, found: look.begins });
  if (look.is === 'sqlite' && look.application !== application)
    throw new Refused({ refused: 'foreign-file', path, found: look.application.toString(16) });
  if (look.is === 'sqlite' && look.version > newest)
    throw new Refused({ refused: 'newer-version', path, file: look.version, ours: newest });
  if (look.is === 'sqlite') inPath(path, () => accessSync(path, constants.W_OK));
  return look;
}

function openShopFile(path: string, fresh: boolean): Sqlite {
  return inPath(path, () => {
    const sqlite = openWriter(path);
    if (fresh) sqlite.pragma(`application_id = ${SHOP_FILE}`);
    return sqlite;
  });
}

/** The shop's key out of its wallet; in a new key file it is made and wrapped, with a fresh name for the shop. */
async function openShopKey(keys: Sqlite, wallet: Wallet, path: string, ids: NewId): Promise<ShopKeys> {
  const wrapped = keys.prepare(`select value from meta where name = 'shop-key'`).pluck().get();
  if (wrapped instanceof Uint8Array) {
    const opened = await wallet.unwrap(wrapped);
    if (isWalletRefusal(opened)) throw new Refused({ ...opened, path: opened.path ?? path });
    if (opened.length !== KEY_BYTES) throw new Refused({ refused: 'wallet-opens-another-shop', path });
    return shopKeysFrom(opened);
  }
  const shopKey = freshKey();
  const kept = await wallet.wrap(shopKey);
  const put = keys.prepare('insert into meta (name, value) values (?, ?)');
  keys.transaction(() => {
    put.run('shop-id', Buffer.from(ids(), 'utf8'));
    put.run('shop-key', Buffer.from(kept));
  })();
  return shopKeysFrom(shopKey);
}

/** The journal and the key file must name the same shop. */
async function checkSameShop(db: Kysely<ShopTables>, keys: Sqlite, path: string): Promise<void> {
  const stored = keys.prepare(`select value from meta where name = 'shop-id'`).pluck().get();
  const inKeys = stored instanceof Uint8Array ? Buffer.from(stored).toString('utf8') : '';
  const row = await db.selectFrom('meta').where('name', '=', 'shop-id').select('value').executeTakeFirst();
  if (!row) await db.insertInto('meta').values({ name: 'shop-id', value: inKeys }).execute();
  else if (row.value !== inKeys) throw new Refused({ refused: 'keys-of-another-shop', path });
}

/** Runs work on one file, so that its errors name that file. */
function inPath<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const refusal = refusalFromError(error, path);
    throw refusal ? new Refused(refusal) : error;
  }
}

function pathOf(error: unknown): string | null {
  const path = error instanceof Error && 'path' in error ? error.path : null;
  return typeof path === 'string' && statSync(path, { throwIfNoEntry: false }) ? path : null;
}
