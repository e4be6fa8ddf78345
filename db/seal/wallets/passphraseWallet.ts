import { randomBytes, scrypt } from 'node:crypto';
import { KEY_BYTES, seal, unseal } from '../cipher.ts';
import type { Wallet } from './wallet.ts';

const ABOUT = 'knowngood/wallet/passphrase/1';
const SALT_BYTES = 16;
/** scrypt cost (RFC 7914): 128 MiB and about half a second on a shop's PC, so that guessing is slow. */
const COST = { N: 2 ** 17, r: 8, p: 1, maxmem: 2 ** 28 };

/**
 * A wallet opened by a passphrase. Nobody can help a shop that forgets it.
 * @public Beside the file, for a shop without a window.
 */
export function passphraseWallet(passphrase: string): Wallet {
  return {
    kind: 'passphrase',
    wrap: async (secret) => {
      const salt = randomBytes(SALT_BYTES);
      return Buffer.concat([salt, seal(await stretch(passphrase, salt), secret, ABOUT)]);
    },
    unwrap: async (wrapped) => {
      const key = await stretch(passphrase, wrapped.subarray(0, SALT_BYTES));
      return unseal(key, wrapped.subarray(SALT_BYTES), ABOUT) ?? { refused: 'passphrase-wrong' };
    },
  };
}

function stretch(passphrase: string, salt: Uint8Array): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    scrypt(passphrase.normalize('NFKC'), salt, KEY_BYTES, COST, (error, key) => (error ? reject(error) : resolve(key)));
  });
}
