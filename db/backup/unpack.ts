import { closeSync, mkdirSync, openSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { sameBytes } from '../../core/journal/chain.ts';
import type { EpochMs } from '../../core/time.ts';
import { headIsGenuine } from '../seal/heads.ts';
import { KeyFile, openKeySqlite } from '../seal/keyFile.ts';
import { type ShopKeys, shopKeysFrom } from '../seal/shopKeys.ts';
import { unknownKeys } from '../shop/checkLine.ts';
import { freshEpoch } from '../shop/firstStart.ts';
import { type ShopPaths, shopPaths } from '../shop/paths.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { BackupRefused } from './backupRefusal.ts';
import type { OpenBundle } from './bundle.ts';
import { whoseIn } from './makeBackup.ts';

/** A backup and the key part that goes with it, both held against their own digests. */
export type BundlePair = { readonly backup: OpenBundle; readonly keyPart: OpenBundle; readonly keyPath: string };

/** What came of laying both out as a shop's folder. */
export type LaidOut = {
  readonly paths: ShopPaths;
  /** Keys that the backup or the key part says were destroyed. */
  readonly erased: readonly {
    readonly id: string;
    readonly owner: string;
    readonly purpose: string;
    readonly at: EpochMs;
  }[];
  /** Sealed heads that belong to entries after the backup. */
  readonly heads: number;
};

/** Writes one part of a file out. */
export function unpackPart(bundle: OpenBundle, name: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true, mode: 0o700 });
  const file = openSync(to, 'wx', 0o600);
  try {
    for (const piece of bundle.read(name)) for (let at = 0; at < piece.length; ) at += writeSync(file, piece, at);
  } finally {
    closeSync(file);
  }
}

/** Writes the backup out as a folder, without keys. */
export function unpackBackup(backup: OpenBundle, folder: string): ShopPaths {
  const paths = shopPaths(folder);
  for (const { name } of backup.header.parts) unpackPart(backup, name, join(folder, name));
  mkdirSync(paths.blobs, { recursive: true, mode: 0o700 });
  writeFileSync(whoseIn(paths.blobs), backup.header.shop, { mode: 0o600 });
  return paths;
}

/** The shop's key, out of whatever wrapped it, and wrapped by the wallet that will open the folder. */
type ShopKeyTwice = { readonly shopKey: Uint8Array; readonly wrapped: Uint8Array };
/** Which branch is laid out, in which folder, as of when. */
type Where = { readonly branch: string; readonly folder: string; readonly now: EpochMs };

/**
 * Lays a backup and its key part out as a shop's folder in a new epoch: what was destroyed stays destroyed, heads of
 * entries that came later are given up and remembered. Nothing else is touched; the caller removes the folder when it
 * throws.
 * @throws {BackupRefused} When the key part is another shop's, or older than the backup.
 */
export function layOut(pair: BundlePair, { shopKey, wrapped }: ShopKeyTwice, { branch, folder, now }: Where): LaidOut {
  const { backup, keyPart } = pair;
  if (backup.header.shop !== keyPart.header.shop)
    throw new BackupRefused({ refused: 'key-part-of-another-shop', path: pair.keyPath });
  const paths = unpackBackup(backup, folder);
  unpackPart(keyPart, 'keys.db', paths.keys);
  const shopKeys = shopKeysFrom(shopKey);
  const keys = openKeySqlite(paths.keys, false);
  const journal = new Database(paths.shop);
  try {
    const keyFile = new KeyFile(keys, shopKeys.wrapping);
    for (const { id, at } of journal.prepare<[], { id: string; at: EpochMs }>('select id, at from erased_key').all())
      keyFile.erase([id], at);
    const missing = unknownKeys(journal, keyFile).length;
    if (missing > 0) throw new BackupRefused({ refused: 'key-part-older-than-backup', path: pair.keyPath, missing });
    const later = headsNotIn(journal, branch, keyFile, shopKeys);
    keyFile.giveUpHeads(branch, later);
    keys.prepare(`update meta set value = ? where name = 'shop-key'`).run(Buffer.from(wrapped));
    beginEpoch(keyFile, journal, now);
    return { paths, erased: keyFile.erased(), heads: later.length };
  } finally {
    journal.close();
    keys.close();
    for (const companion of ['-wal', '-shm', '-journal']) rmSync(`${paths.shop}${companion}`, { force: true });
  }
}

function headsNotIn(journal: Sqlite, branch: string, keyFile: KeyFile, shopKeys: ShopKeys): readonly number[] {
  const hashAt = journal.prepare('select hash from journal where branch = ? and seq = ?').pluck();
  const last = Number(
    journal.prepare('select coalesce(max(seq), 0) from journal where branch = ?').pluck().get(branch),
  );
  return keyFile
    .heads(branch)
    .filter((head) => {
      // One within the backup that does not fit is for the check to find, unless it was sealed over another line's entries.
      if (head.seq <= last) {
        const found = hashAt.get(branch, head.seq);
        return headIsGenuine(shopKeys.heads, head) && found instanceof Uint8Array && !sameBytes(found, head.hash);
      }
      return true;
    })
    .map(({ seq }) => seq);
}

/** Both files bear the new epoch's name; what was marked in the old one holds no more. */
function beginEpoch(keyFile: KeyFile, journal: Sqlite, now: EpochMs): void {
  const epoch = freshEpoch();
  journal.pragma('journal_mode = DELETE');
  const put = journal.prepare(
    'insert into meta (name, value) values (?, ?) on conflict (name) do update set value = excluded.value',
  );
  journal.transaction(() => {
    put.run('epoch', epoch);
    put.run('keys-made', String(keyFile.made()));
  })();
  for (const name of ['marked', 'next-epoch']) keyFile.dropNote(name);
  keyFile.putNote('epoch', epoch);
  keyFile.putNote('brought-back', String(now));
}
