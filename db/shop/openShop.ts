import { randomUUID } from 'node:crypto';
import { accessSync, constants, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Notice } from '../../core/contract/standing.ts';
import type { NewId } from '../../core/ids.ts';
import { word } from '../log/log.ts';
import { migrate } from '../migrations/migrate.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import type { ShopTables } from '../schema.ts';
import { KEY_BYTES } from '../seal/cipher.ts';
import { KEY_FILE_VERSION, KeyFile, openKeySqlite } from '../seal/keyFile.ts';
import { type ShopKeys, shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { kyselyOn, openReader, openWriter, type Sqlite } from '../sqlite/connection.ts';
import { openImage } from '../sqlite/image.ts';
import { type FileLook, KEY_FILE, lookAtFile, SHOP_FILE } from '../sqlite/recognise.ts';
import { assembleShop, type Opening } from './assembleShop.ts';
import { checkLine, damagedMarks, type LinePlace } from './checkLine.ts';
import { checkUndamaged } from './checkUndamaged.ts';
import { filesIn, freshEpoch, makeKeyFile, makeShopFile } from './firstStart.ts';
import { readMark } from './lastAcknowledged.ts';
import { takeLock } from './lockFile.ts';
import { openMarks } from './marks.ts';
import { type OpenRefusal, Refused, refusalFromError } from './openRefusal.ts';
import { type ShopPaths, shopPaths } from './paths.ts';
import { checkBlobs, settleLine } from './settleLine.ts';
import type { OpenShop } from './shop.ts';

export type OpenOptions = Opening & {
  /** Where the shop lies; made when it is not there. */
  readonly folder: string;
  readonly wallet: Wallet;
  /** A folder apart from the shop's, where the last acknowledged entry is kept once more: then a whole older folder is found out too. */
  readonly apart?: string;
  /** Fresh ids; random by default. */
  readonly ids?: NewId;
};

/** Was the shop opened, or refused? */
export const isOpenRefusal = (opened: OpenShop | OpenRefusal): opened is OpenRefusal => 'refused' in opened;

/**
 * Opens a shop's folder for this process alone, or says why not; then nothing in it was touched. A new folder becomes
 * a new shop. An older file is copied to `snapshots` and brought to the newest shape.
 */
export async function openShop(options: OpenOptions): Promise<OpenShop | OpenRefusal> {
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
  { branch, clock, wallet, log, apart, ids = randomUUID }: OpenOptions,
  paths: ShopPaths,
  undo: (() => unknown)[],
): Promise<OpenShop> {
  mkdirSync(paths.folder, { recursive: true, mode: 0o700 });
  accessSync(paths.folder, constants.W_OK | constants.R_OK);
  const shopFile = recogniseFile(paths.shop, SHOP_FILE, NEWEST_VERSION);
  const keysFile = recogniseFile(paths.keys, KEY_FILE, KEY_FILE_VERSION);
  if (isNew(keysFile) && !isNew(shopFile)) throw new Refused({ refused: 'keys-missing', path: paths.keys });
  const lock = takeLock(paths.lock, clock());
  undo.push(lock.release);
  if (lock.stale) log('stale-lock-taken-over', { pid: lock.stale.pid });
  if (isNew(keysFile) || (isNew(shopFile) && neverHeldAShop(paths.keys))) await makeAllAnew(paths, wallet, ids);
  const keys = inPath(paths.keys, () => openKeySqlite(paths.keys, false));
  undo.push(() => keys.close());
  const shopKeys = await openShopKey(keys, wallet, paths.keys);
  const keyFile = new KeyFile(keys, shopKeys.wrapping);
  const shopId = keyFile.note('shop-id') ?? '';
  const apartPath = apart === undefined ? null : join(apart, `${shopId}.last`);
  if (isNew(shopFile)) await finishFirstStart(paths, keyFile, shopKeys, apartPath);
  checkUndamaged(paths.shop, (sqlite) => checkLine(sqlite, { paths, branch, keyFile, shopKeys, apart: apartPath }));
  checkBlobs(paths, shopId);

  const sqlite = inPath(paths.shop, () => openWriter(paths.shop));
  undo.push(() => sqlite.open && sqlite.close());
  const db = kyselyOn<ShopTables>(sqlite);
  const migrated = await migrate(sqlite, db, paths.snapshots);
  if (migrated.from !== migrated.to) log('migrated', { from: migrated.from, to: migrated.to });
  await settleLine(db, keyFile, paths, shopId);
  const reading = openReader(paths.shop);
  undo.push(() => reading.open && reading.close());
  const notices = lostMarks({ paths, keyFile, shopKeys, apart: apartPath });
  const marks = openMarks([paths.last, ...(apartPath ? [apartPath] : [])], shopKeys.heads, log);
  undo.push(() => marks.close());
  const opened = { paths, shopKeys, keyFile, sqlite, readingSqlite: reading, marks, notices };
  return assembleShop({ branch, clock, log }, { ...opened, onlyRead: null, releaseLock: lock.release });
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

/** A start that was cut short may have left a key file with no shop's key in it: nothing was ever sealed with it. */
function neverHeldAShop(path: string): boolean {
  const image = inPath(path, () => openImage(path));
  try {
    return image.prepare(`select count(*) from meta where name = 'shop-key'`).pluck().get() === 0;
  } catch {
    return false;
  } finally {
    image.close();
  }
}

/** @throws {Refused} When sealed files lie here: they belong to a shop whose journal and keys are gone. */
async function makeAllAnew(paths: ShopPaths, wallet: Wallet, ids: NewId): Promise<void> {
  const files = filesIn(paths.blobs);
  if (files > 0) throw new Refused({ refused: 'shop-file-lost', path: paths.shop, entries: null, files });
  await inPathLater(paths.keys, () => makeKeyFile(paths, wallet, ids));
}

/**
 * Makes the shop's file where a first start has not come so far yet.
 * @throws {Refused} When a shop was here before: then its file is lost, and no new one takes its place.
 */
async function finishFirstStart(
  paths: ShopPaths,
  keyFile: KeyFile,
  shopKeys: ShopKeys,
  apart: string | null,
): Promise<void> {
  const marks = [paths.last, ...(apart ? [apart] : [])].map((path) => readMark(path, shopKeys.heads));
  const known = marks.map((mark) => (typeof mark === 'object' && mark.shop === keyFile.note('shop-id') ? mark.seq : 0));
  const entries = Math.max(...known, keyFile.heads().at(-1)?.seq ?? 0);
  const files = filesIn(paths.blobs);
  const wasHere = keyFile.note('begun') !== null || keyFile.made() > 0 || entries > 0 || files > 0;
  if (wasHere) throw new Refused({ refused: 'shop-file-lost', path: paths.shop, entries: entries || null, files });
  if (keyFile.note('epoch') === null) keyFile.putNote('epoch', freshEpoch());
  await inPathLater(paths.shop, () => makeShopFile(paths, keyFile.note('shop-id') ?? '', keyFile.note('epoch') ?? ''));
}

/**
 * The last acknowledged number that was kept, here or apart, and does not hold together, or is gone from here: to be said,
 * and begun anew.
 */
function lostMarks(place: Omit<LinePlace, 'branch'>): readonly Notice[] {
  const { paths, keyFile, shopKeys } = place;
  const gone = readMark(paths.last, shopKeys.heads) === 'absent' && keyFile.note('marked') !== null;
  return [...damagedMarks(place), ...(gone ? [paths.last] : [])].map((path) => ({ notice: 'mark-lost', path }));
}

/** The shop's key out of its wallet. */
async function openShopKey(keys: Sqlite, wallet: Wallet, path: string): Promise<ShopKeys> {
  const wrapped = keys.prepare(`select value from meta where name = 'shop-key'`).pluck().get();
  if (!(wrapped instanceof Uint8Array)) throw new Refused({ refused: 'damaged-file', path, detail: 'shop-key' });
  const opened = await wallet.unwrap(wrapped);
  if (isWalletRefusal(opened)) throw new Refused({ ...opened, path: opened.path ?? path });
  if (opened.length !== KEY_BYTES) throw new Refused({ refused: 'wallet-opens-another-shop', path });
  return shopKeysFrom(opened);
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

/** The same for work that takes its time. */
async function inPathLater(path: string, work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (error) {
    const refusal = error instanceof Refused ? null : refusalFromError(error, path);
    throw refusal ? new Refused(refusal) : error;
  }
}

function pathOf(error: unknown): string | null {
  const path = error instanceof Error && 'path' in error ? error.path : null;
  return typeof path === 'string' && statSync(path, { throwIfNoEntry: false }) ? path : null;
}
