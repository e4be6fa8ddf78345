/** Why a wallet did not give the shop's key. */
export type WalletRefusal = {
  readonly refused:
    | 'wallet-file-missing'
    | 'wallet-file-open-to-others'
    | 'wallet-file-damaged'
    | 'wallet-opens-another-shop'
    | 'passphrase-wrong'
    | 'system-store-refused';
  readonly path?: string;
};

/**
 * Keeps the shop's key from those who only have the files: wraps it once, unwraps it at every start.
 * Made from a file (headless), a passphrase, or the system's key store (handed in by the shell).
 */
export type Wallet = {
  readonly kind: 'file' | 'passphrase' | 'system';
  readonly wrap: (secret: Uint8Array) => Promise<Uint8Array | WalletRefusal>;
  readonly unwrap: (wrapped: Uint8Array) => Promise<Uint8Array | WalletRefusal>;
};

export const isWalletRefusal = (value: Uint8Array | WalletRefusal): value is WalletRefusal =>
  !(value instanceof Uint8Array);
