import type { Kysely, Transaction } from 'kysely';
import type { CommandId, StaffId } from '../../core/ids.ts';
import { CHAIN_START, chainHash, entryBytes } from '../../core/journal/chain.ts';
import type { Draft, Json, Stream } from '../../core/journal/entry.ts';
import type { EpochMs } from '../../core/time.ts';
import type { JournalTable, ShopTables } from '../schema.ts';
import { sha256 } from '../seal/sha256.ts';
import { type LastLink, lastLink } from './lastLink.ts';
import type { Looked } from './reader.ts';
import { toBeStored } from './storedBytes.ts';

/** A decided entry whose personal values have been sealed. */
export type SealedDraft = Draft<string, Json>;

/** What entries carry beside what was decided. */
export type Stamp = {
  readonly branch: string;
  readonly at: EpochMs;
  readonly by: StaffId;
  readonly device: string;
  readonly command: CommandId;
};

/** Does everything a decision looked at still stand as it was seen? */
export async function stillHolds(tx: Kysely<ShopTables>, branch: string, looked: Looked): Promise<boolean> {
  if (looked.wholeAt !== null && ((await lastLink(tx, branch))?.seq ?? 0) !== looked.wholeAt) return false;
  for (const [stream, version] of looked.versions) {
    if ((await streamVersion(tx, branch, stream)) !== version) return false;
  }
  return true;
}

/**
 * Appends entries in order inside the caller's transaction, each chained to the one before. `at` is the clock as it was:
 * the order of things is `seq` alone.
 * @returns The rows as written.
 */
export async function append(
  tx: Transaction<ShopTables>,
  stamp: Stamp,
  drafts: readonly SealedDraft[],
): Promise<readonly JournalTable[]> {
  const versions = new Map<Stream, number>();
  let before: LastLink | undefined = await lastLink(tx, stamp.branch);
  const rows: JournalTable[] = [];
  for (const draft of drafts) {
    const streamSeq = (versions.get(draft.stream) ?? (await streamVersion(tx, stamp.branch, draft.stream))) + 1;
    versions.set(draft.stream, streamSeq);
    const row = chained(stamp, draft, streamSeq, before);
    await tx.insertInto('journal').values(row).execute();
    rows.push(row);
    before = row;
  }
  return rows;
}

function chained(stamp: Stamp, draft: SealedDraft, streamSeq: number, before: LastLink | undefined): JournalTable {
  const { branch, at, by, device, command } = stamp;
  const { stream, kind, v, body } = draft;
  const seq = (before?.seq ?? 0) + 1;
  const bytes = toBeStored(entryBytes({ branch, seq, stream, streamSeq, at, by, device, command, kind, v, body }));
  const prevHash = before?.hash ?? CHAIN_START;
  const hash = chainHash(prevHash, bytes, sha256);
  return {
    branch,
    seq,
    stream,
    stream_seq: streamSeq,
    at,
    by,
    device,
    command,
    kind,
    v,
    bytes,
    prev_hash: Buffer.from(prevHash),
    hash: Buffer.from(hash),
  };
}

async function streamVersion(tx: Kysely<ShopTables>, branch: string, stream: Stream): Promise<number> {
  const { last } = await tx
    .selectFrom('journal')
    .where('branch', '=', branch)
    .where('stream', '=', stream)
    .select(({ fn }) => fn.max('stream_seq').as('last'))
    .executeTakeFirstOrThrow();
  return last === null ? 0 : Number(last);
}
