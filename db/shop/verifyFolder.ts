import { randomBytes } from 'node:crypto';
import { statSync } from 'node:fs';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import type { Json } from '../../core/journal/entry.ts';
import { isBlobName } from '../blobs/blobName.ts';
import { getBlob, hasBlob } from '../blobs/blobs.ts';
import type { JournalFinding } from '../journal/finding.ts';
import { parseStored } from '../journal/readEntry.ts';
import { blobsIn } from '../journal/storedBytes.ts';
import { type JournalVerdict, verifyJournal } from '../journal/verify.ts';
import { NEWEST_VERSION } from '../migrations/migrations.ts';
import type { JournalTable, ShopTables } from '../schema.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import { openBody, sealedFields } from '../seal/sealedBody.ts';
import { sha256 } from '../seal/sha256.ts';
import type { ShopKeys } from '../seal/shopKeys.ts';
import type { Wallet } from '../seal/wallets/wallet.ts';
import { kyselyOn, type Sqlite } from '../sqlite/connection.ts';
import { openImage } from '../sqlite/image.ts';
import { type FileLook, lookAtFile, SHOP_FILE } from '../sqlite/recognise.ts';
import { damagedMarks, mismatchOf } from './checkLine.ts';
import { readKeys } from './openToRead.ts';
import { type ShopPaths, shopPaths } from './paths.ts';
import { changedSchema } from './schemaCheck.ts';
import { differingTables } from './verifyTables.ts';

export type VerifyAsked = {
  readonly folder: string;
  readonly branch: string;
  readonly wallet: Wallet;
  /** The folder apart from the shop's in which the last acknowledged entry is kept; null: not looked at. */
  readonly apart: string | null;
  readonly printedHeads?: readonly string[];
  /** Look at keys, sealed values, sealed files' bytes, kept papers, read tables and command records as well. */
  readonly whole: boolean;
  readonly progress?: (entries: number) => void;
};

/** What was not looked at, and so may be wrong. */
export type NotChecked =
  | 'sealed-values'
  | 'blob-bytes'
  | 'papers'
  | 'read-tables'
  | 'command-records'
  | 'seals-for-want-of-keys'
  | 'apart'
  | 'outside-head';

/** What a check of a shop's folder came to, or why it could not be made. */
export type FolderVerdict =
  | (JournalVerdict & { readonly asked: 'whole' | 'chain'; readonly notChecked: readonly NotChecked[] })
  | { readonly cannot: 'no-shop' | 'foreign-file' | 'newer-version' | 'not-readable'; readonly path: string };

/**
 * Checks a shop's folder and writes nothing, in no file: it works on images in memory, beside an open shop too. The chain
 * check looks at the journal's order, hashes, heads and what was acknowledged; the whole check at everything else.
 */
export async function verifyFolder(asked: VerifyAsked): Promise<FolderVerdict> {
  const paths = shopPaths(asked.folder);
  const cannot = cannotBeAsked(paths);
  if (cannot) return cannot;
  const { keyFile, shopKeys, whole: keysWhole } = await readKeys(paths, asked.wallet);
  const found: JournalFinding[] = damageOf(paths);
  const sqlite = openImage(paths.shop);
  try {
    const apart = asked.apart === null ? null : `${asked.apart}/${keyFile.note('shop-id')}.last`;
    if (keysWhole) found.push(...lineFindings(sqlite, { paths, branch: asked.branch, keyFile, shopKeys, apart }));
    const closer = asked.whole && keysWhole ? closerLook(paths, keyFile) : null;
    const verdict = await verifyJournal({
      db: kyselyOn<ShopTables>(sqlite),
      branch: asked.branch,
      heads: keysWhole ? keyFile.heads(asked.branch) : [],
      headKey: keysWhole ? shopKeys.heads : randomBytes(32),
      hasBlob: (name) => hasBlob(paths.blobs, name),
      printedHeads: asked.printedHeads ?? [],
      ...(asked.progress && { progress: asked.progress }),
      ...(closer && { closer, keyOf: (id) => keyFile.open(id) }),
    });
    if (asked.whole && keysWhole) found.push(...(await wholeFindings(sqlite, asked.branch, keyFile, shopKeys)));
    return {
      ...withFindings(verdict, found),
      asked: asked.whole ? 'whole' : 'chain',
      notChecked: notChecked(asked, keysWhole),
    };
  } catch (error) {
    const detail = error instanceof Error && 'code' in error ? String(error.code) : 'unreadable';
    return {
      ...nothingRead(detail, found),
      asked: asked.whole ? 'whole' : 'chain',
      notChecked: notChecked(asked, keysWhole),
    };
  } finally {
    sqlite.close();
  }
}

function cannotBeAsked(paths: ShopPaths): FolderVerdict | null {
  if (!statSync(paths.shop, { throwIfNoEntry: false })) return { cannot: 'no-shop', path: paths.folder };
  let look: FileLook;
  try {
    look = lookAtFile(paths.shop);
  } catch {
    return { cannot: 'not-readable', path: paths.shop };
  }
  if (look.is === 'foreign' || (look.is === 'sqlite' && look.application !== SHOP_FILE))
    return { cannot: 'foreign-file', path: paths.shop };
  if (look.is === 'sqlite' && look.version > NEWEST_VERSION) return { cannot: 'newer-version', path: paths.shop };
  return look.is === 'sqlite' ? null : { cannot: 'no-shop', path: paths.folder };
}

/** SQLite's own first complaint about each file. */
function damageOf(paths: ShopPaths): JournalFinding[] {
  return [paths.shop, paths.keys].flatMap((path) => {
    const complaint = complaintAbout(path);
    return complaint === null ? [] : [{ seq: 0, wrong: 'file-damaged' as const, detail: `${path}: ${complaint}` }];
  });
}

function complaintAbout(path: string): string | null {
  if (!statSync(path, { throwIfNoEntry: false })) return 'not there';
  try {
    const image = openImage(path);
    try {
      const answer = String(image.pragma('quick_check(1)', { simple: true }));
      return answer === 'ok' ? null : answer;
    } finally {
      image.close();
    }
  } catch (error) {
    return error instanceof Error && 'code' in error ? String(error.code) : 'unreadable';
  }
}

function lineFindings(sqlite: Sqlite, place: Parameters<typeof mismatchOf>[1]): readonly JournalFinding[] {
  const damaged = damagedMarks(place).map((path): JournalFinding => ({ seq: 0, wrong: 'mark-damaged', detail: path }));
  const mismatch = mismatchOf(sqlite, place);
  if (!mismatch) return damaged;
  const seq = 'seq' in mismatch ? mismatch.seq : 'acknowledged' in mismatch ? mismatch.last + 1 : 0;
  return [...damaged, { seq, wrong: 'not-as-acknowledged', detail: `${mismatch.refused} (${mismatch.path})` }];
}

/** Every sealed value of an entry opens under its key, or the key was destroyed; its files hold; its paper is as issued. */
function closerLook(paths: ShopPaths, keyFile: KeyFile): (row: JournalTable) => readonly JournalFinding[] {
  const erased = new Set(keyFile.erased().map(({ id }) => id));
  const keyOf = (id: string) => keyFile.open(id);
  return ({ seq, bytes }) => {
    let stored: ReturnType<typeof parseStored>;
    try {
      stored = parseStored(bytes);
    } catch {
      return [];
    }
    const fields = sealedFields(stored.body).flatMap(({ path, key, opens }): readonly JournalFinding[] => {
      if (erased.has(key)) return [];
      const by = keyOf(key);
      if (!by) return [{ seq, wrong: keyFile.knows(key) ? 'key-damaged' : 'key-missing', detail: key }];
      return opens(by) ? [] : [{ seq, wrong: 'sealed-value-does-not-open', detail: path }];
    });
    return [...fields, ...blobFindings(paths, seq, bytes, keyOf), ...paperFindings(seq, stored, keyOf)];
  };
}

function blobFindings(
  paths: ShopPaths,
  seq: number,
  bytes: Uint8Array,
  keyOf: (id: string) => Uint8Array | null,
): readonly JournalFinding[] {
  return [...blobsIn(bytes)].flatMap((name) => {
    if (!isBlobName(name) || !hasBlob(paths.blobs, name)) return [];
    const got = getBlob(paths.blobs, name, keyOf);
    return 'refused' in got && got.refused === 'blob-damaged'
      ? [{ seq, wrong: 'blob-damaged' as const, detail: name }]
      : [];
  });
}

function paperFindings(
  seq: number,
  stored: ReturnType<typeof parseStored>,
  keyOf: (id: string) => Uint8Array | null,
): readonly JournalFinding[] {
  if (stored.kind !== 'paper-issued') return [];
  const { content, contentHash, number } = openBody(stored.body, keyOf) as {
    content?: { value?: Json };
    contentHash?: string;
    number?: string;
  };
  if (content?.value === null || content?.value === undefined) return [];
  const hash = Buffer.from(sha256(Buffer.from(canonicalJson(content.value), 'utf8'))).toString('hex');
  return hash === contentHash ? [] : [{ seq, wrong: 'paper-not-as-issued', detail: String(number) }];
}

async function wholeFindings(
  sqlite: Sqlite,
  branch: string,
  keyFile: KeyFile,
  shopKeys: ShopKeys,
): Promise<readonly JournalFinding[]> {
  const damaged = keyFile.damaged().map((key): JournalFinding => ({ seq: 0, wrong: 'key-damaged', detail: key }));
  const tools = { keyOf: (id: string) => keyFile.open(id), searchKey: shopKeys.search, tableKey: shopKeys.tables };
  const schema = (await changedSchema(sqlite)).map(
    ({ name }): JournalFinding => ({ seq: 0, wrong: 'schema-changed', detail: name }),
  );
  return [...damaged, ...schema, ...(await differingTables(sqlite, branch, tools))];
}

function notChecked({ whole, apart, printedHeads }: VerifyAsked, keysWhole: boolean): readonly NotChecked[] {
  const left: NotChecked[] = [];
  if (!keysWhole) left.push('seals-for-want-of-keys');
  if (!whole || !keysWhole) left.push('sealed-values', 'blob-bytes', 'papers', 'read-tables', 'command-records');
  if (apart === null) left.push('apart');
  if (!printedHeads?.length) left.push('outside-head');
  return left;
}

const MOST_FINDINGS = 100;

function withFindings(verdict: JournalVerdict, more: readonly JournalFinding[]): JournalVerdict {
  const findings = [...more, ...verdict.findings].sort((a, b) => a.seq - b.seq).slice(0, MOST_FINDINGS);
  return { ...verdict, ok: findings.length === 0, findings, first: findings[0] ?? null };
}

function nothingRead(detail: string, found: readonly JournalFinding[]): JournalVerdict {
  const findings: readonly JournalFinding[] = [...found, { seq: 0, wrong: 'file-damaged', detail }];
  const nothing = { entries: 0, sealedHead: null, uncoveredFrom: 1, clockRanBack: 0 };
  return { ...nothing, ok: false, findings, first: findings[0] ?? null };
}
