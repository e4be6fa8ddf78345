import type { Kysely } from 'kysely';
import { refuse } from '../../core/commands/kernel/decision.ts';
import { sameBytes } from '../../core/journal/chain.ts';
import type { Draft } from '../../core/journal/entry.ts';
import { type EpochMs, epochMs } from '../../core/time.ts';
import { append, type SealedDraft, stillHolds } from '../journal/append.ts';
import type { Bell } from '../journal/changes.ts';
import { lastLink } from '../journal/lastLink.ts';
import { markSealedTexts } from '../journal/markSealedTexts.ts';
import type { Looked, TrackingReader } from '../journal/reader.ts';
import { whyNotAppended } from '../journal/whyNotAppended.ts';
import { errorFacts, type Log } from '../log/log.ts';
import { applyEntries, type ProjectionTools } from '../projections/apply.ts';
import type { Projection } from '../projections/projection.ts';
import { OnlyOneError } from '../projections/writer.ts';
import { COMMAND_RECORDS, type CommandTable, type ShopTables } from '../schema.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import { type KeyNeed, keysNeeded, sealBody } from '../seal/sealedBody.ts';
import { keyedDigest } from '../seal/shopKeys.ts';
import { refusalFromError } from './openRefusal.ts';
import type { Queue } from './queue.ts';
import { putMeta } from './settleLine.ts';
import type { AskedCommand, DecideOnRead, EntriesOrRefusal, Executed, NotExecuted } from './shop.ts';

/** How often a decision is made beside others before it is made alone, where nothing can move underneath it. */
const TRIES_BESIDE_OTHERS = 4;

export type CommandPlace = {
  readonly db: Kysely<ShopTables>;
  readonly reading: Kysely<ShopTables>;
  readonly branch: string;
  readonly path: string;
  readonly openReader: () => Promise<TrackingReader>;
  readonly queue: Queue;
  readonly clock: () => EpochMs;
  readonly keyFile: KeyFile;
  readonly askedKey: Uint8Array;
  readonly projections: readonly Projection[];
  readonly tools: ProjectionTools;
  readonly bell: Bell;
  /** Told when the clock had run back behind the entry before, and by how much. */
  readonly clockBehind: (ms: number, last: EpochMs) => void;
  /** Called after the commit and before the answer: notes how far the shop has come. */
  readonly acknowledging: () => Promise<void>;
  readonly log: Log;
};

type Outcome = Executed | NotExecuted | 'stale';

/**
 * Carries a command out: decides on what the journal says, and appends the entries only while all that was looked at
 * still stands; else loads and decides again. A refusal writes nothing.
 */
export async function runCommand(
  place: CommandPlace,
  asked: AskedCommand,
  decide: DecideOnRead,
): Promise<Executed | NotExecuted> {
  const askedDigest = keyedDigest(place.askedKey, asked.asked);
  const earlier = await answeredBefore(place.reading, place.branch, asked, askedDigest);
  if (earlier) return earlier;
  for (let tries = 0; tries < TRIES_BESIDE_OTHERS; tries++) {
    const { decision, looked, at } = await decideNow(place, decide);
    const outcome = await place.queue(() => conclude(place, decision, { asked, askedDigest, looked, at }));
    if (outcome !== 'stale') return outcome;
  }
  return place.queue(async () => {
    const { decision, looked, at } = await decideNow(place, decide);
    const outcome = await conclude(place, decision, { asked, askedDigest, looked, at });
    if (outcome === 'stale') throw new Error('A decision went stale while nothing else was written');
    return outcome;
  });
}

async function decideNow(
  place: CommandPlace,
  decide: DecideOnRead,
): Promise<{ decision: EntriesOrRefusal; looked: Looked; at: EpochMs }> {
  const reader = await place.openReader();
  const at = place.clock();
  const decision = await decide(reader, at);
  return { decision, looked: reader.looked(), at };
}

/** A command that is decided: what was asked, what was looked at for it, and when. */
type Decided = {
  readonly asked: AskedCommand;
  readonly askedDigest: Uint8Array;
  readonly looked: Looked;
  readonly at: EpochMs;
};

async function conclude(place: CommandPlace, decision: EntriesOrRefusal, decided: Decided): Promise<Outcome> {
  const { asked, askedDigest, looked, at } = decided;
  const { db, branch } = place;
  if (!decision.ok) return (await stillHolds(db, branch, looked)) ? decision : 'stale';
  if (decision.entries.length === 0) throw new Error('A command was accepted without entries');
  // Nobody else writes meanwhile: what is read here is what these entries will follow.
  const now = await place.openReader();
  const refusal = await whyNotAppended(now, decision.entries, { at, by: asked.by });
  if (refusal) {
    const earlier = await answeredBefore(db, branch, asked, askedDigest);
    if (earlier) return earlier;
    if (!(await stillHolds(db, branch, looked))) return 'stale';
    place.log('entry-refused');
    return { ok: false, refusal };
  }
  try {
    // Keys first and durably: an entry whose key is not on the disk could never be read.
    const marked = await markSealedTexts(now, decision.entries, { at, by: asked.by });
    const sealed = sealUnderKeys(place.keyFile, marked, at);
    const outcome = await write(place, sealed, decided);
    if (outcome !== 'stale' && outcome.ok && !outcome.replayed) {
      await place.acknowledging();
      place.bell.ring();
    }
    return outcome;
  } catch (error) {
    if (error instanceof OnlyOneError) return { ok: false, refusal: error.refusal };
    const broken = refusalFromError(error, place.path);
    if (!broken) throw error;
    place.log('command-not-written', errorFacts(error));
    return { ok: false, refusal: broken };
  }
}

function write(
  place: CommandPlace,
  sealed: readonly SealedDraft[],
  { asked, askedDigest, looked, at }: Decided,
): Promise<Outcome> {
  const { branch } = place;
  return place.db.transaction().execute(async (tx) => {
    const earlier = await answeredBefore(tx, branch, asked, askedDigest);
    if (earlier) return earlier;
    if (!(await stillHolds(tx, branch, looked))) return 'stale';
    const { command, by, device } = asked;
    const before = await lastLink(tx, branch);
    const last = before?.at ?? epochMs(0);
    const now = place.clock();
    // Overtaken while it was decided, it is dated no earlier than what overtook it; a clock that ran back is written down as it is.
    const dated = now >= last ? epochMs(Math.max(at, last)) : at;
    const rows = await append(tx, { branch, at: dated, by, device, command }, sealed);
    const [first, end] = [rows[0], rows.at(-1)];
    if (!first || !end) throw new Error('Nothing was appended');
    const behind = last - now;
    if (behind > 0) {
      place.log('clock-behind', { ms: behind, seq: first.seq });
      place.clockBehind(behind, last);
    }
    const record: CommandTable = {
      branch,
      command,
      asked: askedDigest,
      first_seq: first.seq,
      last_seq: end.seq,
      made: first.stream,
      behind_ms: behind > 0 ? behind : null,
    };
    await tx.insertInto('command').values(record).execute();
    const sums = await applyEntries(tx, branch, place.projections, rows, place.tools);
    sums.add(COMMAND_RECORDS, record);
    await sums.keep(tx);
    await tx.updateTable('projection').set({ seq: end.seq }).execute();
    await putMeta(tx, 'keys-made', String(place.keyFile.made()));
    return { ok: true, seq: end.seq, firstStream: first.stream, replayed: false };
  });
}

/** The answer a command had when it was first asked; a refusal when its id was used for something else. */
async function answeredBefore(
  db: Kysely<ShopTables>,
  branch: string,
  { command }: AskedCommand,
  askedDigest: Uint8Array,
): Promise<Executed | NotExecuted | null> {
  const row = await db
    .selectFrom('command')
    .where('branch', '=', branch)
    .where('command', '=', command)
    .selectAll()
    .executeTakeFirst();
  if (!row) return null;
  if (!sameBytes(row.asked, askedDigest)) return refuse('command-id-used-before', { command, seq: row.last_seq });
  return { ok: true, seq: row.last_seq, firstStream: row.made, replayed: true };
}

/** The entries with their personal values sealed, under keys that are on the disk. */
function sealUnderKeys(keyFile: KeyFile, drafts: readonly Draft[], at: EpochMs): readonly SealedDraft[] {
  const needs = drafts.flatMap(({ body }) => keysNeeded(body));
  const keys = new Map(
    needs.length > 0 ? keyFile.current(needs, at).map((key, index) => [nameOf(needs[index]), key]) : [],
  );
  return drafts.map((draft) => ({
    ...draft,
    body: sealBody(draft.body, (owner, purpose) => {
      const key = keys.get(nameOf({ owner, purpose }));
      if (!key) throw new Error('A body needs a key that was not made');
      return key;
    }),
  }));
}

const nameOf = (need: KeyNeed | undefined) => `${need?.owner}/${need?.purpose}`;
