import { chmodSync, closeSync, fsyncSync, openSync, readFileSync, statSync, writeSync } from 'node:fs';
import { freshKey, KEY_BYTES, seal, unseal } from '../cipher.ts';
import type { Wallet } from './wallet.ts';

const ABOUT = 'knowngood/wallet/file/1';

/**
 * A wallet in a file only its owner can read (mode 600), for a service without a person to ask.
 * Whoever has this file and the shop's folder can read everything: keep them on different disks.
 */
export function fileWallet(path: string): Wallet {
  return {
    kind: 'file',
    wrap: async (secret) => seal(readOrMake(path), secret, ABOUT),
    unwrap: async (wrapped) => {
      const found = statSync(path, { throwIfNoEntry: false });
      if (!found) return { refused: 'wallet-file-missing', path };
      if (process.platform !== 'win32' && (found.mode & 0o077) !== 0)
        return { refused: 'wallet-file-open-to-others', path };
      const key = readFileSync(path);
      if (key.length !== KEY_BYTES) return { refused: 'wallet-file-damaged', path };
      return unseal(key, wrapped, ABOUT) ?? { refused: 'wallet-opens-another-shop', path };
    },
  };
}

function readOrMake(path: string): Uint8Array {
  if (statSync(path, { throwIfNoEntry: false })) return readFileSync(path);
  const key = freshKey();
  const file = openSync(path, 'wx', 0o600);
  writeSync(file, key);
  fsyncSync(file);
  closeSync(file);
  chmodSync(path, 0o600);
  return key;
}
