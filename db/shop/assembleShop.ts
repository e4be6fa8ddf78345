import type { Kysely } from 'kysely';
import { refuse } from '../../core/commands/kernel/decision.ts';
import type { Stream } from '../../core/journal/entry.ts';
import type { EpochMs } from '../../core/time.ts';
import { getBlob, hasBlob, putBlob, sweepBlobs } from '../blobs/blobs.ts';
import { Bell, changesAfter } from '../journal/changes.ts';
import { FoldCache } from '../journal/foldCache.ts';
import { lastLink } from '../journal/lastLink.ts';
import { openReaderAt } from '../journal/reader.ts';
import { verifyJournal } from '../journal/verify.ts';
import { errorFacts, type Log, word } from '../log/log.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { digestTables, outOfStep, rebuildTables } from '../projections/rebuild.ts';
import { recognitionDigest } from '../recognition/recognisable.ts';
import type { ShopTables } from '../schema.ts';
import { applyErased, eraseKeys } from '../seal/erase.ts';
import { decideErasure } from '../seal/eraseOwner.ts';
import { readHead, sealHead } from '../seal/heads.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import type { ShopKeys } from '../seal/shopKeys.ts';
import type { Sqlite } from '../sqlite/connection.ts';
import { refusalFromError } from './openRefusal.ts';
import type { ShopPaths } from './paths.ts';
import { openQueue } from './queue.ts';
import { type CommandPlace, runCommand } from './runCommand.ts';
import type { NotExecuted, Shop } from './shop.ts';

export type ShopParts = {
  readonly branch: string;
  readonly clock: () => EpochMs;
  readonly log: Log;
  readonly paths: ShopPaths;
  readonly shopKeys: ShopKeys;
  readonly keyFile: KeyFile;
  readonly sqlite: Sqlite;
  readonly db: Kysely<ShopTables>;
  readonly readingSqlite: Sqlite;
  readonly reading: Kysely<ShopTables>;
  readonly releaseLock: () => void;
};

/** Puts the opened parts together, and brings the read tables into step with the journal. */
export async function assembleShop(parts: ShopParts): Promise<Shop> {
  const { branch, clock, log, paths, shopKeys, keyFile, sqlite, db, reading } = parts;
  const queue = openQueue();
  const bell = new Bell();
  const folds = new FoldCache();
  const keyOf = (id: string) => keyFile.open(id);
  const tools = { keyOf, searchKey: shopKeys.search };
  const openReader = () => openReaderAt({ db: reading, branch, keyOf, folds });
  const commandPlace: CommandPlace = {
    db,
    reading,
    branch,
    path: paths.shop,
    openReader,
    queue,
    clock,
    keyFile,
    askedKey: shopKeys.asked,
    projections: PROJECTIONS,
    tools,
    bell,
    log,
  };
  const rebuildPlace = { sqlite, db, reading, branch, shadowPath: paths.shadow, alone: queue };
  let closed = false;

  const sealHeads = async () => {
    const head = await lastLink(reading, branch);
    return head ? sealHead(keyFile, shopKeys.heads, { branch, seq: head.seq, hash: head.hash, at: clock() }) : null;
  };

  const stale = await outOfStep(db, branch, PROJECTIONS);
  if (stale.length > 0) {
    await rebuildTables(rebuildPlace, stale, tools);
    log('read-tables-made', { count: stale.length });
  }
  await applyErased(db, keyFile);

  return {
    branch,
    runCommand: async (asked, decide) =>
      closed ? (refuse('shop-is-closing') as NotExecuted) : runCommand(commandPlace, asked, decide),
    read: openReader,
    changes: (from) => changesAfter(reading, branch, bell, from),
    recognise: async (kind, text) => {
      const digest = recognitionDigest(shopKeys.search, kind, text);
      if (!digest) return [];
      const rows = await reading
        .selectFrom('recognition')
        .where('kind', '=', kind)
        .where('digest', '=', digest)
        .orderBy('stream')
        .select('stream')
        .execute();
      return rows.map(({ stream }) => stream as Stream);
    },
    blobs: {
      put: async (bytes, { of, purpose }) => {
        try {
          const [key] = keyFile.current([{ owner: of, purpose }], clock());
          if (!key) throw new Error('No sealing key was made');
          return putBlob(paths.blobs, bytes, key);
        } catch (error) {
          const refusal = refusalFromError(error, paths.blobs);
          if (!refusal) throw error;
          return refusal;
        }
      },
      get: async (name) => getBlob(paths.blobs, name, keyOf),
      sweep: async () => {
        const rows = await reading.selectFrom('named_blob').select('blob').execute();
        return sweepBlobs(paths.blobs, new Set(rows.map(({ blob }) => blob)), clock());
      },
    },
    eraseOwner: (owner, decisions) =>
      queue(async () => {
        const { erasure, keys } = decideErasure(keyFile, owner, decisions, clock());
        await eraseKeys(db, keyFile, keys, erasure.at);
        folds.empty();
        log('keys-destroyed', { count: keys.length });
        return erasure;
      }),
    sealHeads: () => queue(sealHeads),
    lastSealedHead: () => {
      const head = keyFile.heads(branch).at(-1);
      return head ? readHead(head) : null;
    },
    verify: ({ printedHeads = [] } = {}) =>
      verifyJournal({
        db: reading,
        branch,
        heads: keyFile.heads(branch),
        headKey: shopKeys.heads,
        hasBlob: (name) => hasBlob(paths.blobs, name),
        printedHeads,
      }),
    rebuild: () => rebuildTables(rebuildPlace, PROJECTIONS, tools),
    digests: () => queue(() => digestTables(db, PROJECTIONS)),
    close: async () => {
      if (closed) return;
      closed = true;
      bell.end();
      await queue(() => closeAll(parts, sealHeads));
    },
  };
}

/** Closes everything, come what may: a full disk must not keep the folder held. */
async function closeAll(
  { readingSqlite, sqlite, keyFile, releaseLock, log }: ShopParts,
  sealHeads: () => Promise<unknown>,
): Promise<void> {
  const steps: readonly (readonly [name: string, step: () => unknown])[] = [
    ['seal-head', sealHeads],
    ['close-reader', () => readingSqlite.close()],
    ['empty-log', () => sqlite.pragma('wal_checkpoint(TRUNCATE)')],
    ['close-journal', () => sqlite.close()],
    ['close-keys', () => keyFile.close()],
    ['let-go', releaseLock],
  ];
  for (const [name, step] of steps) {
    try {
      await step();
    } catch (error) {
      log('not-closed-cleanly', { step: word(name), ...errorFacts(error) });
    }
  }
}
