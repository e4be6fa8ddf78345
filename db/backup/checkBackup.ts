import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { EpochMs } from '../../core/time.ts';
import { isBlobName } from '../blobs/blobName.ts';
import { hasBlob } from '../blobs/blobs.ts';
import type { JournalFinding } from '../journal/finding.ts';
import { verifyJournal } from '../journal/verify.ts';
import type { ShopTables } from '../schema.ts';
import { sha256 } from '../seal/sha256.ts';
import { kyselyOn } from '../sqlite/connection.ts';
import { openImage } from '../sqlite/image.ts';
import type { BackupRefusal } from './backupRefusal.ts';
import { type BundleHeader, bundleKindOf, openBundle } from './bundle.ts';
import { refusalOf } from './makeBackup.ts';
import { closePair, type Opener, openPair, tryOut } from './tryOut.ts';
import { unpackBackup } from './unpack.ts';

export type CheckAsked = {
  readonly file: string;
  readonly branch: string;
  /** The key part and what opens it; null: what is sealed is not looked at. */
  readonly key: { readonly path: string; readonly opener: Opener } | null;
  readonly clock: () => EpochMs;
  readonly told?: (bytes: number) => void;
};

/** What a file from a shop is, and whether it is whole. */
export type CheckedFile = {
  readonly is: 'backup' | 'key-part';
  readonly header: Pick<BundleHeader, 'shop' | 'at' | 'seq' | 'lacking'>;
  readonly entries: number;
  readonly findings: readonly JournalFinding[];
  /** Was what is sealed looked at too? */
  readonly whole: boolean;
};

/**
 * Checks a backup or a key part, told by its content, in a scratch folder that is gone afterwards: with its key part a
 * backup is brought back there and wholly checked, without it its bytes, its chain and its files' names are.
 * @returns Null for a file that is neither; a refusal for one that is not whole, or cannot be asked.
 */
export async function checkBackup(asked: CheckAsked): Promise<CheckedFile | BackupRefusal | null> {
  let scratch: string | null = null;
  try {
    const kind = bundleKindOf(asked.file);
    if (kind === null) return null;
    if (kind === 'key-part') return checkKeyPart(asked.file);
    scratch = mkdtempSync(join(tmpdir(), 'knowngood-check-'));
    const folder = join(scratch, 'shop');
    return asked.key ? await withKeys(asked, asked.key, folder) : await withoutKeys(asked, folder);
  } catch (error) {
    return refusalOf(error, asked.file);
  } finally {
    if (scratch) rmSync(scratch, { recursive: true, force: true });
  }
}

function checkKeyPart(file: string): CheckedFile {
  const { header, close } = openBundle(file, 'key-part');
  close();
  return { is: 'key-part', header, entries: 0, findings: [], whole: false };
}

async function withKeys(
  asked: CheckAsked,
  { path, opener }: NonNullable<CheckAsked['key']>,
  folder: string,
): Promise<CheckedFile> {
  const pair = openPair(asked.file, path, asked.told);
  try {
    const { entries, findings } = await tryOut({ pair, branch: asked.branch, opener, folder, now: asked.clock() });
    return { is: 'backup', header: pair.backup.header, entries, findings, whole: true };
  } finally {
    closePair(pair);
  }
}

async function withoutKeys({ file, branch, told }: CheckAsked, folder: string): Promise<CheckedFile> {
  const backup = openBundle(file, 'backup', told);
  try {
    const paths = unpackBackup(backup, folder);
    const { header } = backup;
    const lacking = new Set(header.lacking.map((name) => name.slice(-64)));
    const changed = header.parts
      .filter(({ name }) => name.startsWith('blobs/'))
      .filter(({ name }) => Buffer.from(sha256(readFileSync(join(folder, name)))).toString('hex') !== name.slice(-64))
      .map(({ name }): JournalFinding => ({ seq: 0, wrong: 'blob-damaged', detail: `blob:${name.slice(-64)}` }));
    const sqlite = openImage(paths.shop);
    try {
      const verdict = await verifyJournal({
        db: kyselyOn<ShopTables>(sqlite),
        branch,
        heads: [],
        headKey: new Uint8Array(32),
        hasBlob: (name) => hasBlob(paths.blobs, name) || (isBlobName(name) && lacking.has(name.slice(-64))),
        printedHeads: [],
      });
      const cut: readonly JournalFinding[] =
        verdict.entries === header.seq ? [] : [{ seq: header.seq, wrong: 'tail-cut-behind-sealed-head' }];
      return {
        is: 'backup',
        header,
        entries: verdict.entries,
        findings: [...changed, ...verdict.findings, ...cut],
        whole: false,
      };
    } finally {
      sqlite.close();
    }
  } finally {
    backup.close();
  }
}
