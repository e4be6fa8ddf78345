import { randomBytes } from 'node:crypto';
import type { EpochMs } from '../../core/time.ts';
import { KEY_BYTES } from '../seal/cipher.ts';
import { openKeySqlite } from '../seal/keyFile.ts';
import { isWalletRefusal, type Wallet } from '../seal/wallets/wallet.ts';
import { takeLock } from '../shop/lockFile.ts';
import { shopPaths } from '../shop/paths.ts';
import { KEY_FILE, lookAtFile } from '../sqlite/recognise.ts';
import { type BackupRefusal, BackupRefused } from './backupRefusal.ts';
import { refusalOf } from './makeBackup.ts';
import { type Opener, WRAPPED_BY } from './tryOut.ts';

/**
 * Lets a passphrase or restore words open a shop's backups where its wallet is not: wraps the shop's key by them too. What was
 * set before opens key parts made from now on no more. The shop must be closed.
 * @returns A refusal, when nothing was set; null when it was.
 */
export async function openElsewhere(asked: {
  readonly folder: string;
  readonly wallet: Wallet;
  readonly elsewhere: Opener & { readonly by: 'passphrase' | 'words' };
  readonly clock: () => EpochMs;
}): Promise<BackupRefusal | null> {
  const paths = shopPaths(asked.folder);
  try {
    const look = lookAtFile(paths.keys);
    if (look.is !== 'sqlite' || look.application !== KEY_FILE)
      throw new BackupRefused({ refused: 'no-shop', path: asked.folder });
    const lock = takeLock(paths.lock, asked.clock());
    try {
      const keys = openKeySqlite(paths.keys, false);
      try {
        const wrapped = keys.prepare(`select value from meta where name = 'shop-key'`).pluck().get();
        const opened = await asked.wallet.unwrap(wrapped instanceof Uint8Array ? wrapped : randomBytes(KEY_BYTES));
        const anew = isWalletRefusal(opened) ? opened : await asked.elsewhere.wallet.wrap(opened);
        if (isWalletRefusal(anew)) throw new BackupRefused({ ...anew, path: anew.path ?? paths.keys });
        keys
          .prepare(
            'insert into meta (name, value) values (?, ?) on conflict (name) do update set value = excluded.value',
          )
          .run(WRAPPED_BY[asked.elsewhere.by], Buffer.from(anew));
        return null;
      } finally {
        keys.close();
      }
    } finally {
      lock.release();
    }
  } catch (error) {
    return refusalOf(error, paths.keys);
  }
}
