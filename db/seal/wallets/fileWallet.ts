import {
  chmodSync,
  closeSync,
  fsyncSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { syncFolder } from '../../sqlite/syncFolder.ts';
import { freshKey, KEY_BYTES, seal, unseal } from '../cipher.ts';
import { isWalletRefusal, type Wallet, type WalletRefusal } from './wallet.ts';

const ABOUT = 'knowngood/wallet/file/1';

/**
 * A wallet in a file only its owner can read (mode 600), for a service without a person to ask.
 * Whoever has this file and the shop's folder can read everything: keep them on different disks.
 */
export function fileWallet(path: string): Wallet {
  return {
    kind: 'file',
    wrap: async (secret) => {
      // A start that was cut short may have left the file empty; nothing is wrapped by it yet.
      if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) === 0) makeKey(path);
      const key = readKey(path);
      return isWalletRefusal(key) ? key : seal(key, secret, ABOUT);
    },
    unwrap: async (wrapped) => {
      const key = readKey(path);
      if (isWalletRefusal(key)) return key;
      return unseal(key, wrapped, ABOUT) ?? { refused: 'wallet-opens-another-shop', path };
    },
  };
}

function readKey(path: string): Uint8Array | WalletRefusal {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) return { refused: 'wallet-file-missing', path };
  if (process.platform !== 'win32' && (found.mode & 0o077) !== 0)
    return { refused: 'wallet-file-open-to-others', path };
  const key = readFileSync(path);
  return key.length === KEY_BYTES ? key : { refused: 'wallet-file-damaged', path };
}

/** Makes the file with a fresh key in it: under its own name it is whole or not there at all. */
function makeKey(path: string): void {
  const partial = `${path}.${process.pid}.new`;
  const file = openSync(partial, 'w', 0o600);
  try {
    writeSync(file, freshKey());
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  chmodSync(partial, 0o600);
  putInPlace(partial, path);
  syncFolder(dirname(path));
}

/** Another shop of this account may be making the same file just now: the first one stays. */
function putInPlace(partial: string, path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.size === 0) rmSync(path);
  try {
    linkSync(partial, path);
    rmSync(partial);
  } catch (error) {
    if (statSync(path, { throwIfNoEntry: false })) rmSync(partial);
    // Some disks know no links: there a rename has to do.
    else if (error instanceof Error) renameSync(partial, path);
  }
}
