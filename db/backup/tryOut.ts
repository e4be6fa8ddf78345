import { rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import type { EpochMs } from '../../core/time.ts';
import type { JournalFinding } from '../journal/finding.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import { KEY_BYTES } from '../seal/cipher.ts';
import { KeyFile, shapedInMemory } from '../seal/keyFile.ts';
import { shopKeysFrom } from '../seal/shopKeys.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { isOpenRefusal, openShop } from '../shop/openShop.ts';
import { verifyFolder } from '../shop/verifyFolder.ts';
import { BackupRefused } from './backupRefusal.ts';
import { openBundle } from './bundle.ts';
import { headerIsGenuine } from './makeBackup.ts';
import { type BundlePair, type LaidOut, layOut } from './unpack.ts';

/** What opens the shop's key in a key part: the wallet it was made with, a passphrase, or the restore words. */
export type Opener = { readonly by: 'wallet' | 'passphrase' | 'words'; readonly wallet: Wallet };

/** Under which name a key file holds the shop's key wrapped by each. */
export const WRAPPED_BY: Readonly<Record<Opener['by'], string>> = {
  wallet: 'shop-key',
  passphrase: 'shop-key-passphrase',
  words: 'shop-key-words',
};

/** What a backup proved to be when it was laid out and wholly checked. */
export type TriedOut = LaidOut & {
  readonly entries: number;
  /** What is wrong with it, but for files that the shop itself lacked when it was made. */
  readonly findings: readonly JournalFinding[];
  /** The last entry known of the shop when the key part was written. */
  readonly known: number;
  readonly shopKey: Uint8Array;
};

export type TryOutAsked = {
  readonly pair: BundlePair;
  readonly branch: string;
  readonly opener: Opener;
  /** Where it is laid out: a folder that is not there yet, whose parent is. */
  readonly folder: string;
  readonly now: EpochMs;
};

/** Opens a backup and its key part; close both. @throws {BackupRefused} When either is not whole, or they are not one shop's. */
export function openPair(backupPath: string, keyPath: string, told?: (bytes: number) => void): BundlePair {
  const keyPart = openBundle(keyPath, 'key-part');
  try {
    const backup = openBundle(backupPath, 'backup', told);
    if (backup.header.shop === keyPart.header.shop) return { backup, keyPart, keyPath };
    backup.close();
    throw new BackupRefused({ refused: 'key-part-of-another-shop', path: keyPath });
  } catch (error) {
    keyPart.close();
    throw error;
  }
}

export function closePair({ backup, keyPart }: BundlePair): void {
  backup.close();
  keyPart.close();
}

/**
 * Lays a backup out and checks it wholly: chain, seals, sealed values, files, papers, read tables, and that its end is the
 * one it was made with.
 * @throws {BackupRefused} When the key part does not open or does not belong to it.
 */
export async function tryOut({ pair, branch, opener, folder, now }: TryOutAsked): Promise<TriedOut> {
  const { wrapped, shopKey, heads } = await openShopKey(pair, branch, opener);
  const keys = shopKeysFrom(shopKey);
  const { backup, keyPart } = pair;
  if (!headerIsGenuine('key-part', keyPart.header, keys))
    throw new BackupRefused({ refused: 'backup-changed', path: pair.keyPath, kind: 'key-part' });
  if (!headerIsGenuine('backup', backup.header, keys))
    throw new BackupRefused({ refused: 'backup-changed', path: folder, kind: 'backup' });
  rmSync(folder, { recursive: true, force: true });
  const laid = layOut(pair, { shopKey, wrapped }, { branch, folder, now });
  if (backup.header.shape < NEWEST_VERSION) await bringUp(folder, branch, opener.wallet, now);
  const verdict = await verifyFolder({ folder, branch, wallet: opener.wallet, apart: null, whole: true });
  if ('cannot' in verdict) throw new BackupRefused({ refused: 'backup-changed', path: folder, kind: 'backup' });
  const lacking = new Set(backup.header.lacking.map((name) => `blob:${name.slice(-64)}`));
  const findings = verdict.findings.filter(
    ({ wrong, detail }) => !(wrong === 'blob-missing' && lacking.has(detail ?? '')),
  );
  const { seq, hash } = backup.header;
  const sameEnd = endIs(laid.paths.shop, branch, seq, hash);
  const known = Math.max(keyPart.header.seq, heads, seq);
  return {
    ...laid,
    entries: verdict.entries,
    findings: sameEnd ? findings : [...findings, { seq, wrong: 'tail-cut-behind-sealed-head' }],
    known,
    shopKey,
  };
}

/** Brings a folder of an older shape to the newest, as any start would. */
async function bringUp(folder: string, branch: string, wallet: Wallet, now: EpochMs): Promise<void> {
  const opened = await openShop({ folder, branch, wallet, clock: () => now, log: () => undefined });
  if (isOpenRefusal(opened)) throw new BackupRefused(opened);
  await opened.close();
}

async function openShopKey({ keyPart, keyPath }: BundlePair, branch: string, { by, wallet }: Opener) {
  const sqlite = shapedInMemory(new Database(Buffer.concat([...keyPart.read('keys.db')])));
  try {
    const wrapped = sqlite.prepare('select value from meta where name = ?').pluck().get(WRAPPED_BY[by]);
    if (!(wrapped instanceof Uint8Array))
      throw new BackupRefused({ refused: by === 'words' ? 'no-restore-words' : 'no-passphrase', path: keyPath });
    const opened = await wallet.unwrap(wrapped);
    if (isWalletRefusal(opened))
      throw new BackupRefused(
        by === 'words' && opened.refused === 'passphrase-wrong'
          ? { refused: 'restore-words-wrong', path: keyPath }
          : { ...opened, path: opened.path ?? keyPath },
      );
    if (opened.length !== KEY_BYTES) throw new BackupRefused({ refused: 'wallet-opens-another-shop', path: keyPath });
    const heads = new KeyFile(sqlite, shopKeysFrom(opened).wrapping).lastHead(branch)?.seq ?? 0;
    return { wrapped, shopKey: opened, heads };
  } finally {
    sqlite.close();
  }
}

function endIs(path: string, branch: string, seq: number, hash: string): boolean {
  const journal = new Database(path, { readonly: true });
  try {
    const last = journal.prepare('select coalesce(max(seq), 0) from journal where branch = ?').pluck().get(branch);
    const found = journal.prepare('select hash from journal where branch = ? and seq = ?').pluck().get(branch, seq);
    return last === seq && (seq === 0 || (found instanceof Uint8Array && Buffer.from(found).toString('hex') === hash));
  } finally {
    journal.close();
  }
}
