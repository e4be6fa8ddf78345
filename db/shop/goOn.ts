import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { sameBytes } from '../../core/journal/chain.ts';
import type { ProjectionTools } from '../projections/apply.ts';
import type { ShopTables } from '../schema.ts';
import { headIsGenuine } from '../seal/heads.ts';
import { KeyFile, openKeySqlite } from '../seal/keyFile.ts';
import { type ShopKeys, shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal } from '../seal/wallets/wallet.ts';
import { kyselyOn, openWriter, type Sqlite } from '../sqlite/connection.ts';
import { openImage } from '../sqlite/image.ts';
import { SHOP_FILE } from '../sqlite/recognise.ts';
import { unknownKeys } from './checkLine.ts';
import { clearPartial, freshEpoch, partialOf, putInPlace } from './firstStart.ts';
import { takeLock } from './lockFile.ts';
import { type OpenRefusal, Refused } from './openRefusal.ts';
import { isOpenRefusal, type OpenOptions, openShop } from './openShop.ts';
import { type ShopPaths, shopPaths } from './paths.ts';
import { salvage } from './salvage.ts';
import { putMeta } from './settleLine.ts';

/** What a shop gives up when it goes on with what is here. */
export type GivenUp = {
  /** Why it was not opened. */
  readonly why: OpenRefusal;
  /** The last entry that is here. */
  readonly last: number;
  /** Sealed heads that no longer fit this journal. */
  readonly heads: number;
  /** Keys that entries are sealed under and that are nowhere. */
  readonly keys: number;
  /** Where the damaged file lies now; null where none was damaged. */
  readonly setAside: string | null;
};

/** Refusals after which a shop can go on with what is here. */
const MAY_GO_ON: ReadonlySet<OpenRefusal['refused']> = new Set([
  'damaged-file',
  'entries-missing',
  'another-journal',
  'sealed-head-forged',
  'keys-older-than-journal',
  'files-of-two-ages',
]);

/**
 * Lets a shop go on with what is here after something of it was lost: heads that no longer fit are given up, names of
 * lost keys are never given again, a damaged journal is replaced by what can be read of it (the damaged file is kept),
 * and a new epoch begins, so that what belongs to the line that was given up is recognised. Cut short, it can be asked
 * again.
 * @param really False: says what would be given up, and changes nothing.
 * @returns Null when the shop opens as it is; a refusal when going on is no way out.
 */
export async function goOnWithWhatIsHere(options: OpenOptions, really: boolean): Promise<GivenUp | OpenRefusal | null> {
  const opened = await openShop(options);
  if (!isOpenRefusal(opened)) {
    await opened.close();
    return null;
  }
  const paths = shopPaths(options.folder);
  if (!MAY_GO_ON.has(opened.refused) || (opened.refused === 'damaged-file' && opened.path !== paths.shop))
    return opened;
  try {
    return await giveUp(options, paths, opened, really);
  } catch (error) {
    if (error instanceof Refused) return error.refusal;
    throw error;
  }
}

async function giveUp(
  { wallet, branch, clock, apart }: OpenOptions,
  paths: ShopPaths,
  why: OpenRefusal,
  really: boolean,
): Promise<GivenUp | OpenRefusal> {
  const lock = takeLock(paths.lock, clock());
  const keys = openKeySqlite(paths.keys, false);
  try {
    const wrapped = keys.prepare(`select value from meta where name = 'shop-key'`).pluck().get();
    const opened = wrapped instanceof Uint8Array ? await wallet.unwrap(wrapped) : null;
    if (!opened || isWalletRefusal(opened)) return why;
    const shopKeys = shopKeysFrom(opened);
    const keyFile = new KeyFile(keys, shopKeys.wrapping);
    const setAside = why.refused === 'damaged-file' ? join(paths.folder, `set-aside-${clock()}`) : null;
    const journal = await readable(paths, branch, keyFile, shopKeys, setAside !== null);
    try {
      const heads = headsNotFitting(journal, branch, keyFile, shopKeys);
      const lost = unknownKeys(journal, keyFile);
      const last = Number(
        journal.prepare('select coalesce(max(seq), 0) from journal where branch = ?').pluck().get(branch),
      );
      const given: GivenUp = { why, last, heads: heads.length, keys: lost.length, setAside };
      if (!really) return given;
      const next = freshEpoch();
      keyFile.putNote('next-epoch', next);
      if (setAside) await replaceJournal(paths, journal, branch, toolsOf(keyFile, shopKeys), setAside);
      keyFile.giveUp(lost, clock());
      keyFile.giveUpHeads(branch, heads);
      await beginEpoch(paths, next, keyFile);
      for (const path of [paths.last, ...(apart ? [join(apart, `${keyFile.note('shop-id')}.last`)] : [])])
        rmSync(path, { force: true });
      keyFile.dropNote('marked');
      keyFile.putNote('epoch', next);
      keyFile.dropNote('next-epoch');
      return given;
    } finally {
      journal.close();
    }
  } finally {
    keys.close();
    lock.release();
  }
}

/** The journal as it is, or what can be read of a damaged one. */
async function readable(
  paths: ShopPaths,
  branch: string,
  keyFile: KeyFile,
  shopKeys: ShopKeys,
  damaged: boolean,
): Promise<Sqlite> {
  const image = openImage(paths.shop);
  return damaged ? salvage(image, branch, toolsOf(keyFile, shopKeys)) : image;
}

const toolsOf = (keyFile: KeyFile, shopKeys: ShopKeys): ProjectionTools => ({
  keyOf: (id: string) => keyFile.open(id),
  searchKey: shopKeys.search,
  tableKey: shopKeys.tables,
});

function headsNotFitting(journal: Sqlite, branch: string, keyFile: KeyFile, shopKeys: ShopKeys): readonly number[] {
  const hashAt = journal.prepare('select hash from journal where branch = ? and seq = ?').pluck();
  const fits = (seq: number, hash: Uint8Array) => {
    const found = hashAt.get(branch, seq);
    return found instanceof Uint8Array && sameBytes(found, hash);
  };
  return keyFile
    .heads(branch)
    .filter((head) => !headIsGenuine(shopKeys.heads, head) || !fits(head.seq, head.hash))
    .map(({ seq }) => seq);
}

/** Puts what could be read in the damaged file's place, and that one aside: nothing of it is thrown away. */
async function replaceJournal(
  paths: ShopPaths,
  from: Sqlite,
  branch: string,
  tools: ProjectionTools,
  setAside: string,
): Promise<void> {
  clearPartial(paths.shop);
  const into = openWriter(partialOf(paths.shop));
  into.pragma(`application_id = ${SHOP_FILE}`);
  await salvage(from, branch, tools, into);
  into.pragma('wal_checkpoint(TRUNCATE)');
  into.close();
  mkdirSync(setAside, { recursive: true, mode: 0o700 });
  for (const file of [paths.shop, `${paths.shop}-wal`, `${paths.shop}-shm`]) {
    if (existsSync(file)) renameSync(file, join(setAside, basename(file)));
  }
  putInPlace(paths.shop);
}

async function beginEpoch(paths: ShopPaths, epoch: string, keyFile: KeyFile): Promise<void> {
  const sqlite = openWriter(paths.shop);
  try {
    const db = kyselyOn<ShopTables>(sqlite);
    await putMeta(db, 'epoch', epoch);
    await putMeta(db, 'keys-made', String(keyFile.made()));
  } finally {
    sqlite.close();
  }
}
