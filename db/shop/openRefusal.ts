import type { Refusal } from '../../core/refusal.ts';
import type { WalletRefusal } from '../seal/wallets/wallet.ts';

/** Why a shop was not opened. Nothing in its folder was touched. */
export type OpenRefusal =
  | { readonly refused: 'foreign-file'; readonly path: string; readonly found: string }
  | { readonly refused: 'damaged-file'; readonly path: string; readonly detail: string }
  | { readonly refused: 'newer-version'; readonly path: string; readonly file: number; readonly ours: number }
  | { readonly refused: 'folder-not-writable'; readonly path: string; readonly code: string }
  | { readonly refused: 'disk-full'; readonly path: string }
  | {
      readonly refused: 'held-by-another';
      readonly path: string;
      readonly pid: number | null;
      readonly host: string | null;
      readonly since: number | null;
    }
  | { readonly refused: 'keys-missing'; readonly path: string }
  | { readonly refused: 'keys-of-another-shop'; readonly path: string }
  | { readonly refused: 'disk-failing'; readonly path: string; readonly code: string }
  | Mismatch
  | (WalletRefusal & { readonly path: string });

/** What was acknowledged and sealed before is not what is here. */
export type Mismatch =
  /** The journal's file is gone and the rest is here; `entries`: how many are known to have been in it. */
  | {
      readonly refused: 'shop-file-lost';
      readonly path: string;
      readonly entries: number | null;
      readonly files: number;
    }
  /** The journal ends before an entry that was acknowledged or sealed. */
  | {
      readonly refused: 'entries-missing';
      readonly path: string;
      readonly last: number;
      readonly acknowledged: number;
      readonly missing: number;
    }
  /** An entry that was acknowledged or sealed is another now. */
  | { readonly refused: 'another-journal'; readonly path: string; readonly seq: number }
  /** A sealed head is not the shop's own seal. */
  | { readonly refused: 'sealed-head-forged'; readonly path: string; readonly seq: number }
  /** The key file is older than the journal: keys that entries are sealed under are not in it. */
  | { readonly refused: 'keys-older-than-journal'; readonly path: string; readonly missing: number }
  /** Files of one shop, from before and after it was gone on with anew. */
  | { readonly refused: 'files-of-two-ages'; readonly path: string }
  | { readonly refused: 'blobs-of-another-shop'; readonly path: string };

/** What is answered to whatever would write while the shop is open to be read only. */
export const onlyRead = ({ refused, path }: OpenRefusal): Refusal => ({
  refused: 'shop-only-read',
  why: refused,
  path,
});

/** Stops opening and carries the refusal to the door. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly refusal: OpenRefusal;
  constructor(refusal: OpenRefusal) {
    super(refusal.refused);
    this.refusal = refusal;
  }
}

const NOT_WRITABLE = new Set([
  'EACCES',
  'EPERM',
  'EROFS',
  'ENOTDIR',
  'EEXIST',
  'SQLITE_READONLY',
  'SQLITE_CANTOPEN',
  'SQLITE_READONLY_DIRECTORY',
  'SQLITE_READONLY_DBMOVED',
]);
/** The index beside the log is the first thing that finds no room on a full disk. */
const FULL = new Set(['ENOSPC', 'EDQUOT', 'SQLITE_FULL', 'SQLITE_IOERR_SHMSIZE']);
const DAMAGED = new Set(['SQLITE_CORRUPT', 'SQLITE_NOTADB', 'SQLITE_CORRUPT_INDEX', 'SQLITE_IOERR_SHORT_READ']);

/** A system's or SQLite's error as a refusal about a path; null when it is a defect. */
export function refusalFromError(error: unknown, path: string): OpenRefusal | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (FULL.has(code)) return { refused: 'disk-full', path };
  if (DAMAGED.has(code)) return { refused: 'damaged-file', path, detail: code };
  if (NOT_WRITABLE.has(code)) return { refused: 'folder-not-writable', path, code };
  if (code === 'EIO' || code.startsWith('SQLITE_IOERR')) return { refused: 'disk-failing', path, code };
  if (code.startsWith('SQLITE_BUSY')) return { refused: 'held-by-another', path, pid: null, host: null, since: null };
  return null;
}
