import { sql } from 'kysely';
import { refuse } from '../../core/commands/kernel/decision.ts';
import type { Notice } from '../../core/contract/standing.ts';
import { ownerId } from '../../core/ids.ts';
import type { Stream } from '../../core/journal/entry.ts';
import { DAY_MS, type EpochMs, epochMs, MINUTE_MS } from '../../core/time.ts';
import { isBlobName } from '../blobs/blobName.ts';
import { dropBlob, getBlob, hasBlob, putBlob, sweepBlobs } from '../blobs/blobs.ts';
import { Bell, changesAfter } from '../journal/changes.ts';
import { FoldCache } from '../journal/foldCache.ts';
import { lastLink } from '../journal/lastLink.ts';
import { lookThrough } from '../journal/lookThrough.ts';
import { openReaderAt } from '../journal/reader.ts';
import type { Unreadable } from '../journal/readRow.ts';
import { verifyJournal } from '../journal/verify.ts';
import { errorFacts, type Log, word } from '../log/log.ts';
import { PROJECTIONS } from '../projections/projections.ts';
import { digestTables, rebuildTables } from '../projections/rebuild.ts';
import { recognitionDigest } from '../recognition/recognisable.ts';
import type { ShopTables } from '../schema.ts';
import { applyErased, eraseKeys } from '../seal/erase.ts';
import { decideErasure, keysToErase } from '../seal/eraseOwner.ts';
import { readHead, sealHead } from '../seal/heads.ts';
import type { KeyFile } from '../seal/keyFile.ts';
import type { ShopKeys } from '../seal/shopKeys.ts';
import { kyselyOn, type Sqlite } from '../sqlite/connection.ts';
import { giveUpDamaged, healTables } from './heal.ts';
import type { Marks } from './marks.ts';
import { type OpenRefusal, onlyRead, refusalFromError } from './openRefusal.ts';
import type { ShopPaths } from './paths.ts';
import { openQueue } from './queue.ts';
import { type CommandPlace, runCommand } from './runCommand.ts';
import type { OpenShop } from './shop.ts';
import { StandingKept } from './standing.ts';
import { openTelling } from './tellUnreadable.ts';
import { whyNotWritten } from './whyNotWritten.ts';

/** As many as are looked at to tell on how many days there was work. */
const LAST_ENTRIES = 5000;
/** In the key file: whose erasure is under way. */
const ERASING = 'erasing';
/** So far two readings of a clock may lie apart without a word. */
const CLOCK_MAY_DIFFER_MS = MINUTE_MS;

/** What a shop is opened with. */
export type Opening = {
  /** The branch of the shop whose chain is written here. */
  readonly branch: string;
  readonly clock: () => EpochMs;
  readonly log: Log;
};

/** What was opened of it. */
export type ShopParts = {
  readonly paths: ShopPaths;
  readonly shopKeys: ShopKeys;
  readonly keyFile: KeyFile;
  readonly sqlite: Sqlite;
  readonly readingSqlite: Sqlite;
  readonly marks: Marks;
  /** Known before anything was looked into. */
  readonly notices: readonly Notice[];
  /** Why the shop is opened to be read only; null when it may be written. */
  readonly onlyRead: OpenRefusal | null;
  readonly releaseLock: () => void;
};

/** Puts the opened parts together, and brings the read tables into step with the journal. */
export async function assembleShop({ branch, clock, log }: Opening, parts: ShopParts): Promise<OpenShop> {
  const { paths, shopKeys, keyFile, sqlite } = parts;
  const [db, reading] = [kyselyOn<ShopTables>(sqlite), kyselyOn<ShopTables>(parts.readingSqlite)];
  const queue = openQueue();
  const bell = new Bell();
  const folds = new FoldCache();
  const keyOf = (id: string) => keyFile.open(id);
  const tools = { keyOf, searchKey: shopKeys.search, tableKey: shopKeys.tables };
  const standing = new StandingKept(parts.onlyRead);
  for (const notice of parts.notices) standing.say(notice);
  const clockBehind = (ms: number, last: EpochMs) => {
    if (ms > CLOCK_MAY_DIFFER_MS) standing.say({ notice: 'clock-behind-journal', ms, last });
  };
  const { tell, setApart } = openTelling(standing, log);
  const onUnreadable = ({ seq, wrong }: Unreadable, stream: Stream) => tell({ seq, wrong, stream });
  const openReader = () => openReaderAt({ db: reading, branch, keyOf, folds, onUnreadable });
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
    acknowledging: async () => keepMark(),
    clockBehind: (ms, last) => clockBehind(ms, last),
    log,
  };
  const rebuildPlace = { sqlite, db, reading, branch, shadowPath: paths.shadow, alone: queue };
  let closed = false;
  let looking: Promise<unknown> = Promise.resolve();
  const lookedAt = () => {
    const found = lookThrough(reading, branch, () => closed);
    looking = found.catch(() => undefined);
    return found;
  };
  const line = { shop: keyFile.note('shop-id') ?? '', epoch: keyFile.note('epoch') ?? '' };

  const keepMark = async () => {
    const last = await lastLink(db, branch);
    const head = keyFile.lastHead(branch)?.seq ?? 0;
    const hash = Buffer.from(last?.hash ?? new Uint8Array(32)).toString('hex');
    parts.marks.put({ ...line, seq: last?.seq ?? 0, hash, keys: keyFile.made(), head });
  };
  const sealHeads = async () => {
    const head = standing.onlyRead ? undefined : await lastLink(reading, branch);
    if (!head) return null;
    const sealed = sealHead(keyFile, shopKeys.heads, { branch, seq: head.seq, hash: head.hash, at: clock() });
    await keepMark();
    return sealed;
  };

  /** Destroys what the journal says was to be, and was not yet. */
  const endErasure = async () => {
    const owner = keyFile.note(ERASING);
    if (owner === null) return;
    const keys = await keysToErase(await openReader(), keyFile, ownerId(owner));
    await eraseKeys(db, keyFile, keys, clock(), shopKeys.tables);
    await keepMark();
    folds.empty();
    keyFile.dropNote(ERASING);
    if (keys.length > 0) log('keys-destroyed', { count: keys.length });
  };

  if (!parts.onlyRead) {
    await healTables(rebuildPlace, tools, standing, log);
    await applyErased(db, keyFile, shopKeys.tables);
    await endErasure();
    giveUpDamaged(keyFile, clock(), standing, log);
    await keepMark();
    if (keyFile.note('marked') === null) keyFile.putNote('marked', 'yes');
  }
  const lastAt = (await lastLink(reading, branch))?.at ?? epochMs(0);
  clockBehind(lastAt - clock(), lastAt);
  await (await openReader()).loadReadable('shop');

  return {
    id: line.shop,
    branch,
    path: paths.shop,
    runCommand: async (asked, decide) =>
      closed
        ? refuse('shop-is-closing')
        : standing.onlyRead
          ? { ok: false, refusal: onlyRead(standing.onlyRead) }
          : runCommand(commandPlace, asked, decide),
    whyNotWritten: (drafts, written) => whyNotWritten(commandPlace, drafts, written),
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
      return rows.map(({ stream }) => stream);
    },
    blobs: {
      put: async (bytes, { of, purpose }) => {
        if (standing.onlyRead) return onlyRead(standing.onlyRead);
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
      forget: (draft) =>
        queue(async () => {
          if (standing.onlyRead) return;
          keyFile.forget(draft);
          await keepMark();
        }),
      drop: (name) => standing.onlyRead || dropBlob(paths.blobs, name),
      sweep: async (also = []) => {
        const { named, broken, unreadable } = await lookedAt();
        // What an entry named that is broken, or is none, is not known: then nothing goes.
        const isUnknown = broken.length > 0 || unreadable.some(({ wrong }) => wrong === 'not-an-entry');
        if (closed || standing.onlyRead || isUnknown) return 0;
        const last = (await lastLink(reading, branch))?.at ?? 0;
        return sweepBlobs(paths.blobs, new Set([...named, ...also]), clock(), last);
      },
    },
    daysWorked: async (since, most) => {
      const { seq = 0 } = (await lastLink(reading, branch)) ?? {};
      const days = await reading
        .selectFrom('journal')
        .where('branch', '=', branch)
        .where('seq', '>', seq - LAST_ENTRIES)
        .where('at', '>=', since)
        .select(sql<number>`at / ${sql.lit(DAY_MS)}`.as('day'))
        .distinct()
        .limit(most)
        .execute();
      return days.length;
    },
    held: (owner) => [...new Set(keyFile.keysOf(owner).map(({ purpose }) => purpose))],
    erasing: async (owner, carryOut) => {
      if (standing.onlyRead) return carryOut();
      keyFile.putNote(ERASING, owner);
      const done = await carryOut();
      await queue(endErasure);
      return done;
    },
    eraseOwner: (owner, decisions) =>
      queue(async () => {
        const { erasure, keys } = decideErasure(keyFile, owner, decisions, clock());
        await eraseKeys(db, keyFile, keys, erasure.at, shopKeys.tables);
        await keepMark();
        folds.empty();
        log('keys-destroyed', { count: keys.length });
        return erasure;
      }),
    sealHeads: () => queue(sealHeads),
    lastSealedHead: () => {
      const head = keyFile.lastHead(branch);
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
    digests: () => queue(async () => digestTables(sqlite, PROJECTIONS, shopKeys.tables)),
    standing: () => standing.now(),
    setApart,
    lookThrough: async () => {
      const found = await lookedAt();
      for (const { seq, wrong } of found.broken) tell({ seq, wrong, stream: null });
      for (const { seq, wrong, stream } of found.unreadable) tell({ seq, wrong, stream });
      const missing = [...found.named].filter((name) => isBlobName(name) && !hasBlob(paths.blobs, name));
      if (missing[0]) standing.say({ notice: 'files-missing', count: missing.length, first: missing[0] });
      return { entries: found.entries, broken: found.broken.length, missing: missing.length };
    },
    close: async () => {
      if (closed) return;
      closed = true;
      bell.end();
      await looking;
      await queue(() => closeAll(parts, sealHeads, log));
    },
  };
}

/** Closes everything, come what may: a full disk must not keep the folder held. */
async function closeAll(
  { readingSqlite, sqlite, keyFile, marks, onlyRead, releaseLock }: ShopParts,
  sealHeads: () => Promise<unknown>,
  log: Log,
): Promise<void> {
  const steps: readonly (readonly [name: string, step: () => unknown])[] = [
    ['seal-head', sealHeads],
    ['close-reader', () => readingSqlite.close()],
    ['empty-log', () => onlyRead ?? sqlite.pragma('wal_checkpoint(TRUNCATE)')],
    ['close-journal', () => sqlite.open && sqlite.close()],
    ['close-keys', () => keyFile.close()],
    ['close-marks', () => marks.close()],
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
