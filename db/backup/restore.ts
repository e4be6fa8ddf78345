import { mkdirSync, readdirSync, renameSync, rmdirSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { EpochMs } from '../../core/time.ts';
import type { JournalFinding } from '../journal/finding.ts';
import { openKeySqlite } from '../seal/keyFile.ts';
import { shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { readMark } from '../shop/lastAcknowledged.ts';
import { takeLock } from '../shop/lockFile.ts';
import { Refused } from '../shop/openRefusal.ts';
import { syncFolder } from '../sqlite/syncFolder.ts';
import { type BackupRefusal, BackupRefused } from './backupRefusal.ts';
import { refusalOf } from './makeBackup.ts';
import { closePair, type Opener, openPair, type TriedOut, tryOut } from './tryOut.ts';

export type RestoreAsked = {
  readonly backup: string;
  readonly key: string;
  /** Where the shop is to lie: a folder that is empty or not there. */
  readonly folder: string;
  readonly branch: string;
  readonly opener: Opener;
  /** The wallet that will open the shop there, where it is not the one that opened the key part. */
  readonly newWallet: { readonly wallet: Wallet; readonly path: string } | null;
  /** Where the last acknowledged entry of each shop of this account is kept; null: not looked at. */
  readonly apart: string | null;
  readonly clock: () => EpochMs;
  /** False: says what it would come to, and changes nothing. */
  readonly really: boolean;
  readonly told?: (bytes: number) => void;
};

/** What bringing a backup back comes to. */
export type Restored = {
  readonly shop: string;
  readonly madeAt: EpochMs;
  /** The last entry in it; later ones that are known of are lost. */
  readonly last: number;
  readonly lost: number;
  /** Sealed heads of later entries: papers that bear one belong to the line that was given up. */
  readonly heads: number;
  readonly findings: readonly JournalFinding[];
  readonly lacking: number;
  /** Erasures after this moment may be missing, and must be carried out again. */
  readonly erasuresFrom: EpochMs;
  readonly erased: readonly { readonly owner: string; readonly at: EpochMs }[];
};

/**
 * Brings a backup back into an empty folder, in a new epoch: laid out beside it, wholly checked there, and given its
 * name at last. Nothing is ever overwritten.
 * @returns The refusal, when it was not brought back; then nothing was changed.
 */
export async function restoreBackup(asked: RestoreAsked): Promise<Restored | BackupRefusal> {
  const scratch = join(dirname(asked.folder), `.${basename(asked.folder)}.restoring`);
  try {
    mayBeMade(asked.folder);
    const lock = lockFor(`${scratch}.lock`, asked.clock());
    try {
      return await underLock(asked, scratch);
    } finally {
      rmSync(scratch, { recursive: true, force: true });
      lock.release();
    }
  } catch (error) {
    return refusalOf(error, asked.folder);
  }
}

function mayBeMade(folder: string): void {
  const found = statSync(folder, { throwIfNoEntry: false });
  if (found && !found.isDirectory()) throw new BackupRefused({ refused: 'target-no-folder', path: folder });
  if (found && readdirSync(folder).length > 0) throw new BackupRefused({ refused: 'target-not-empty', path: folder });
}

function lockFor(path: string, now: EpochMs) {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  try {
    return takeLock(path, now);
  } catch (error) {
    if (error instanceof Refused && error.refusal.refused === 'held-by-another')
      throw new BackupRefused({ refused: 'restore-under-way', path: dirname(path), pid: error.refusal.pid });
    throw error;
  }
}

async function underLock(asked: RestoreAsked, scratch: string): Promise<Restored> {
  const { folder, branch, opener, newWallet, apart, really } = asked;
  if (newWallet && statSync(newWallet.path, { throwIfNoEntry: false }))
    throw new BackupRefused({ refused: 'wallet-there', path: newWallet.path });
  const pair = openPair(asked.backup, asked.key, asked.told);
  try {
    const tried = await tryOut({ pair, branch, opener, folder: scratch, now: asked.clock() });
    const { header } = pair.backup;
    const mark = apart === null ? null : join(apart, `${header.shop}.last`);
    const known = Math.max(tried.known, mark === null ? 0 : acknowledgedIn(mark, tried, header.shop));
    if (really) {
      if (newWallet) await wrapAnew(tried, newWallet.wallet);
      mayBeMade(folder);
      if (statSync(folder, { throwIfNoEntry: false })) rmdirSync(folder);
      renameSync(scratch, folder);
      syncFolder(dirname(folder));
      if (mark !== null) rmSync(mark, { force: true });
    }
    return {
      shop: header.shop,
      madeAt: header.at,
      last: header.seq,
      lost: known - header.seq,
      heads: tried.heads,
      findings: tried.findings,
      lacking: header.lacking.length,
      erasuresFrom: later(header.at, pair.keyPart.header.at),
      erased: byOwner(tried),
    };
  } finally {
    closePair(pair);
  }
}

/** How far the shop had come by what this account remembers of it. */
function acknowledgedIn(path: string, { shopKey }: TriedOut, shop: string): number {
  const mark = readMark(path, shopKeysFrom(shopKey).heads);
  return typeof mark === 'object' && mark.shop === shop ? mark.seq : 0;
}

async function wrapAnew({ paths, shopKey }: TriedOut, wallet: Wallet): Promise<void> {
  const wrapped = await wallet.wrap(shopKey);
  if (isWalletRefusal(wrapped)) throw new BackupRefused({ ...wrapped, path: wrapped.path ?? paths.keys });
  const keys = openKeySqlite(paths.keys, false);
  try {
    keys.prepare(`update meta set value = ? where name = 'shop-key'`).run(Buffer.from(wrapped));
  } finally {
    keys.close();
  }
}

const later = (a: EpochMs, b: EpochMs): EpochMs => (a > b ? a : b);

/** Owners of whom something was destroyed, each with the last time. */
function byOwner({ erased }: TriedOut): Restored['erased'] {
  const last = new Map<string, EpochMs>();
  for (const { owner, at } of erased) last.set(owner, later(at, last.get(owner) ?? at));
  return [...last].map(([owner, at]) => ({ owner, at }));
}
