import type { Kysely } from 'kysely';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { checkLink, type Link, sameBytes } from '../../core/journal/chain.ts';
import type { Json } from '../../core/journal/entry.ts';
import { type BlobName, isBlobName } from '../blobs/blobName.ts';
import type { JournalTable, ShopTables } from '../schema.ts';
import { headIsGenuine, readHead, type SealedHead, seqOfShortHead, shortHead } from '../seal/heads.ts';
import type { HeadRow } from '../seal/keyFile.ts';
import { sha256 } from '../seal/sha256.ts';
import type { JournalFinding } from './finding.ts';
import type { KeyOf } from './readEntry.ts';
import { asRead } from './readRow.ts';
import { ShapeCheck } from './shapeCheck.ts';
import { blobsIn, textOfStored } from './storedBytes.ts';
import { CommandCheck, StreamCheck } from './verifyOrder.ts';

export type JournalVerdict = {
  readonly ok: boolean;
  readonly entries: number;
  /** The first broken entry, or the first head that no longer fits. */
  readonly first: JournalFinding | null;
  /** At most a hundred findings, by entry. */
  readonly findings: readonly JournalFinding[];
  readonly sealedHead: SealedHead | null;
  /** Entries from here on came after the last sealed head: a cut there would not show. Null when all are covered. */
  readonly uncoveredFrom: number | null;
  /** Commands for which the clock had run back behind the entry before. */
  readonly clockRanBack: number;
};

const PAGE = 1000;
const MOST_FINDINGS = 100;

export type VerifyPlace = {
  readonly db: Kysely<ShopTables>;
  readonly branch: string;
  readonly heads: readonly HeadRow[];
  readonly headKey: Uint8Array;
  readonly hasBlob: (name: BlobName) => boolean;
  readonly printedHeads: readonly string[];
  /** Told how many entries were looked at, every page. */
  readonly progress?: (entries: number) => void;
  /** Opens personal values, so that what they say is looked at too; they are not opened unless given. */
  readonly keyOf?: KeyOf;
  /** Looks at one entry more closely. */
  readonly closer?: (row: JournalTable) => readonly JournalFinding[];
};

/**
 * Checks the whole journal of a branch: every link of the chain over the stored bytes, the columns beside them, the
 * count of every stream, every command once and whole, every sealed and printed head, every named blob, and whether each
 * entry can be read.
 */
export async function verifyJournal(place: VerifyPlace): Promise<JournalVerdict> {
  const { db, branch } = place;
  const findings: JournalFinding[] = [];
  const heads = new Map(place.heads.map((head) => [head.seq, head]));
  const printed = readPrinted(place.printedHeads, findings);
  const streams = new StreamCheck();
  const shapes = new ShapeCheck(place.keyOf);
  const commands = await CommandCheck.load(db, branch);
  let before: Link | null = null;
  for (;;) {
    const rows: readonly JournalTable[] = await db
      .selectFrom('journal')
      .where('branch', '=', branch)
      .where('seq', '>', before?.seq ?? 0)
      .orderBy('seq')
      .limit(PAGE)
      .selectAll()
      .execute();
    for (const row of rows) {
      const link: Link = { seq: row.seq, prevHash: row.prev_hash, hash: row.hash, bytes: row.bytes };
      const wrong = checkLink(before, link, sha256);
      if (wrong) findings.push({ seq: row.seq, wrong });
      const changed = checkBytes(row);
      findings.push(
        ...changed,
        ...(wrong === null && changed.length === 0 ? checkShape(row, shapes) : []),
        ...streams.see(row),
        ...commands.see(row),
        ...checkHeads(row, heads, printed, place.headKey),
        ...checkBlobs(row, place.hasBlob),
        ...(place.closer?.(row) ?? []),
      );
      before = link;
      if (findings.length > MOST_FINDINGS) break;
    }
    if (rows.length < PAGE || findings.length > MOST_FINDINGS) break;
    place.progress?.(before?.seq ?? 0);
    // Lets commands in between two pages.
    await new Promise((resolve) => setImmediate(resolve));
  }
  const last = before?.seq ?? 0;
  if (findings.length <= MOST_FINDINGS) findings.push(...commands.left(), ...cutTail(heads, printed, last));
  return verdict(place, findings, last, commands.clockRanBack);
}

function verdict(
  place: VerifyPlace,
  found: readonly JournalFinding[],
  last: number,
  clockRanBack: number,
): JournalVerdict {
  const findings = [...found].sort((a, b) => a.seq - b.seq).slice(0, MOST_FINDINGS);
  const covering = place.heads.filter((head) => head.seq <= last && headIsGenuine(place.headKey, head)).at(-1);
  const covered = covering?.seq ?? 0;
  return {
    ok: findings.length === 0,
    entries: last,
    first: findings[0] ?? null,
    findings,
    sealedHead: covering ? readHead(covering) : null,
    uncoveredFrom: last > covered ? covered + 1 : null,
    clockRanBack,
  };
}

function checkBytes(row: JournalTable): readonly JournalFinding[] {
  let fields: Json;
  try {
    const text = textOfStored(row.bytes);
    fields = JSON.parse(text);
    if (canonicalJson(fields) !== text) return [{ seq: row.seq, wrong: 'bytes-not-canonical' }];
  } catch {
    return [{ seq: row.seq, wrong: 'bytes-not-canonical' }];
  }
  const beside = {
    branch: row.branch,
    seq: row.seq,
    stream: row.stream,
    streamSeq: row.stream_seq,
    at: row.at,
    by: row.by,
    device: row.device,
    command: row.command,
    kind: row.kind,
    v: row.v,
  };
  const written = new Map(Object.entries<Json>(typeof fields === 'object' ? (fields ?? {}) : {}));
  const differs = Object.entries(beside).filter(([name, value]) => written.get(name) !== value);
  return differs.map(([name]) => ({ seq: row.seq, wrong: 'column-differs-from-bytes', detail: name }));
}

/** An entry that cannot be read is named by its stream, its number in it and its kind. */
function checkShape(row: JournalTable, shapes: ShapeCheck): readonly JournalFinding[] {
  const unreadable = shapes.see(asRead(row));
  if (!unreadable || unreadable.wrong === 'bytes-do-not-fit-hash') return [];
  const { seq, wrong, at } = unreadable;
  const where = `${row.stream} ${row.stream_seq}, ${row.kind}`;
  return [{ seq, wrong, detail: at ? `${where}, ${at}` : where }];
}

function checkHeads(
  row: JournalTable,
  heads: ReadonlyMap<number, HeadRow>,
  printed: ReadonlyMap<number, string>,
  headKey: Uint8Array,
): readonly JournalFinding[] {
  const findings: JournalFinding[] = [];
  const head = heads.get(row.seq);
  if (head && !headIsGenuine(headKey, head)) findings.push({ seq: row.seq, wrong: 'sealed-head-forged' });
  else if (head && !sameBytes(head.hash, row.hash)) findings.push({ seq: row.seq, wrong: 'sealed-head-does-not-fit' });
  const text = printed.get(row.seq);
  if (text !== undefined && text !== shortHead(row.seq, row.hash))
    findings.push({ seq: row.seq, wrong: 'printed-head-does-not-fit', detail: text });
  return findings;
}

function checkBlobs(row: JournalTable, hasBlob: (name: BlobName) => boolean): readonly JournalFinding[] {
  return [...blobsIn(row.bytes)]
    .filter((name) => isBlobName(name) && !hasBlob(name))
    .map((name) => ({ seq: row.seq, wrong: 'blob-missing', detail: name }));
}

function readPrinted(texts: readonly string[], findings: JournalFinding[]): ReadonlyMap<number, string> {
  const printed = new Map<number, string>();
  for (const text of texts) {
    const seq = seqOfShortHead(text);
    if (seq === null) findings.push({ seq: 0, wrong: 'printed-head-unreadable', detail: text });
    else printed.set(seq, text.trim().toUpperCase());
  }
  return printed;
}

function cutTail(
  heads: ReadonlyMap<number, HeadRow>,
  printed: ReadonlyMap<number, string>,
  last: number,
): readonly JournalFinding[] {
  const beyond = [...heads.keys(), ...printed.keys()].filter((seq) => seq > last);
  const farthest = Math.max(0, ...beyond);
  return farthest > 0
    ? [{ seq: last + 1, wrong: 'tail-cut-behind-sealed-head', detail: `head at ${farthest}, journal ends at ${last}` }]
    : [];
}
