import type { OpenRefusal } from '../shop/openRefusal.ts';

/** Why a backup was not made, checked or brought back. Nothing was changed. */
export type BackupRefusal =
  | { readonly refused: 'no-shop' | 'not-a-backup' | 'not-a-key-part'; readonly path: string }
  | { readonly refused: 'backup-newer'; readonly path: string; readonly file: number; readonly ours: number }
  | { readonly refused: 'backup-cut'; readonly path: string; readonly size: number; readonly whole: number }
  | { readonly refused: 'backup-changed'; readonly path: string; readonly kind: 'backup' | 'key-part' }
  /** A file is there already, and not one that may be replaced. */
  | { readonly refused: 'backup-file-there' | 'key-part-file-there'; readonly path: string }
  /** The folder or disk for it is not there, or went while it was written. */
  | { readonly refused: 'backup-place-missing' | 'backup-place-gone'; readonly path: string; readonly code: string }
  | { readonly refused: 'file-not-readable'; readonly path: string; readonly code: string }
  | { readonly refused: 'key-part-of-another-shop'; readonly path: string }
  /** Keys that entries of the backup are sealed under are not in the key part. */
  | { readonly refused: 'key-part-older-than-backup'; readonly path: string; readonly missing: number }
  | { readonly refused: 'target-not-empty' | 'target-no-folder' | 'wallet-there'; readonly path: string }
  | { readonly refused: 'restore-under-way'; readonly path: string; readonly pid: number | null }
  | { readonly refused: 'no-restore-words' | 'no-passphrase'; readonly path: string }
  | { readonly refused: 'restore-words-wrong'; readonly path: string }
  | OpenRefusal;

/** Stops what was begun and carries the refusal to the door. */
export class BackupRefused extends Error {
  override readonly name = 'BackupRefused';
  readonly refusal: BackupRefusal;
  constructor(refusal: BackupRefusal) {
    super(refusal.refused);
    this.refusal = refusal;
  }
}
