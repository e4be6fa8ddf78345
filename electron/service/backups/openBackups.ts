import { rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import refusals from '../../../assets/words/en/refusals.json' with { type: 'json' };
import { type Keepable, whichToKeep } from '../../../core/backups/keepRule.ts';
import type { BackupRun, BackupSettings, BackupSheet } from '../../../core/contract/backupSheet.ts';
import type { Notice } from '../../../core/contract/standing.ts';
import type { Refusal, RefusalName } from '../../../core/refusal.ts';
import { DAY_MS, epochMs, MINUTE_MS } from '../../../core/time.ts';
import { refusalFromError } from '../../../db/index.ts';
import { type BackupState, readState, writeState } from './backupState.ts';
import type { BackupTask, TaskDone } from './backupTask.ts';
import {
  backupName,
  backupsIn,
  keyPartName,
  markPlace,
  type PlaceAt,
  placeIsThere,
  shortShop,
  sweepHalves,
} from './places.ts';

/** Looked at so often whether one is due. */
const EVERY_MS = 15 * MINUTE_MS;
/** The first look after a start waits until the morning's rush is over. */
const FIRST_MS = 2 * MINUTE_MS;
/** What the last one may take when the shop closes: the window waits five seconds in all. */
const CLOSING_MS = 3_000;

export type BackupNeeds = {
  readonly folder: string;
  readonly wallet: string;
  /** Where the app keeps its own things. */
  readonly app: string;
  readonly shopId: string;
  /** The last entry that there is. */
  readonly head: () => Promise<number>;
  readonly zone: () => Promise<string>;
  readonly clock: () => number;
  /** Does a task beside the service. */
  readonly does: (task: BackupTask, stop: AbortSignal) => Promise<TaskDone>;
  readonly tellDefect: (what: string, error: unknown) => void;
};

/** The shop's backups as they are made by themselves and by hand. */
export type Backups = {
  readonly sheet: () => BackupSheet;
  /** From now on by themselves. */
  readonly begin: () => void;
  readonly notices: () => Promise<readonly Notice[]>;
  /** Makes one now and tries it out. */
  readonly run: (why: BackupRun['why']) => Promise<BackupRun>;
  /** Tries the newest out that was not yet, and makes one where a day has gone by since the last. */
  readonly look: () => Promise<void>;
  /** @returns Why it was not set; null when it was. */
  readonly set: (settings: BackupSettings) => Refusal | null;
  /** After keys were destroyed: replaces every key part that can be reached. @returns Folders that could not be. */
  readonly afterErasure: () => Promise<readonly string[]>;
  /** One more where something was written since the last, within the time that closing has. */
  readonly end: () => Promise<void>;
};

export function openBackups(needs: BackupNeeds): Backups {
  const { folder, app, clock, tellDefect } = needs;
  const statePath = join(folder, 'backups.json');
  const shop = shortShop(needs.shopId);
  const stop = new AbortController();
  let state: BackupState = readState(statePath, clock());
  let running: Promise<unknown> = Promise.resolve();

  const keep = (next: BackupState) => {
    state = next;
    try {
      writeState(statePath, next);
    } catch (error) {
      tellDefect('backups-remembered', error);
    }
  };
  const chosen = (path: string | null, usual: string): PlaceAt => ({
    path: path ?? join(app, usual, needs.shopId),
    own: path === null,
  });
  const place = () => chosen(state.settings.place, 'backups');
  const keyPlace = () => chosen(state.settings.keyPlace, 'backup-keys');
  const keyPath = (at: string) => join(at, keyPartName(shop));
  const oneByOne = <T>(work: () => Promise<T>): Promise<T> => {
    const done = running.then(work, work);
    running = done.catch(() => undefined);
    return done;
  };
  const made = () => state.runs.filter(({ file }) => file !== null);
  const lastGood = () => made().findLast(({ proved }) => proved === 'whole') ?? null;
  const remember = (run: BackupRun) => {
    keep({ ...state, runs: [...state.runs, run], keyPlaces: [...new Set([...state.keyPlaces, keyPlace().path])] });
    return run;
  };
  const proved = (file: string, done: Pick<BackupRun, 'proved' | 'refusal'>) =>
    keep({ ...state, runs: state.runs.map((run) => (run.file === file ? { ...run, ...done } : run)) });

  const make = async (why: BackupRun['why'], signal: AbortSignal): Promise<BackupRun> => {
    const at = epochMs(clock());
    const none = (refusal: Refusal): BackupRun => ({ at, why, file: null, seq: 0, proved: 'not-yet', refusal });
    const file = join(place().path, backupName(shop, at));
    for (const one of [place(), keyPlace()])
      if (!isThere(one)) return remember(none({ refused: 'backup-place-missing', path: one.path, code: 'ENOENT' }));
    sweepHalves(place().path, shop);
    const done = await needs.does(
      { task: 'make', folder, wallet: needs.wallet, to: file, key: keyPath(keyPlace().path) },
      signal,
    );
    if ('made' in done) return remember({ at, why, file, seq: done.made.seq, proved: 'not-yet', refusal: null });
    return remember(none(refusalIn(done)));
  };
  const tryOut = async ({ file }: BackupRun): Promise<void> => {
    if (file === null) return;
    const done = await needs.does(
      { task: 'try', file, wallet: needs.wallet, key: keyPath(keyPlace().path) },
      stop.signal,
    );
    if (stop.signal.aborted) return;
    if ('tried' in done && done.tried.wrong.length === 0) proved(file, { proved: 'whole', refusal: null });
    else if ('tried' in done)
      proved(file, {
        proved: 'broken',
        refusal: {
          refused: 'backup-not-whole',
          path: file,
          count: done.tried.wrong.length,
          first: done.tried.wrong[0] ?? '',
        },
      });
    else proved(file, { proved: 'broken', refusal: refusalIn(done) });
  };
  const thin = async () => {
    const known = new Map(made().map((run) => [run.file, run.proved]));
    const all = backupsIn(place().path, shop).map((one): Keepable & typeof one => ({
      ...one,
      proved: known.get(one.file) ?? 'not-yet',
    }));
    const stays = whichToKeep(all, state.settings.keep, await needs.zone());
    for (const one of all) if (!stays.has(one)) rmSync(one.file, { force: true });
  };
  const wholeRun = async (why: BackupRun['why']): Promise<BackupRun> => {
    const run = await make(why, stop.signal);
    await tryOut(run);
    try {
      if (run.file !== null) await thin();
    } catch (error) {
      tellDefect('backups-thinned', error);
    }
    return state.runs.findLast(({ at, file }) => at === run.at && file === run.file) ?? run;
  };
  const look = () =>
    oneByOne(async () => {
      const last = made().at(-1);
      const due = !last || clock() - last.at >= DAY_MS || clock() < last.at;
      if (due && (await needs.head()) > (last?.seq ?? 0)) await wholeRun('daily');
      else if (last?.proved === 'not-yet') await tryOut(last);
    }).catch((error: unknown) => tellDefect('backup', error));
  const timers: NodeJS.Timeout[] = [];

  return {
    sheet: () => ({
      settings: state.settings,
      place: place().path,
      keyPlace: keyPlace().path,
      sameDisk: sameDisk(folder, place().path),
      last: state.runs.at(-1) ?? null,
      lastGood: lastGood(),
      kept: backupsIn(place().path, shop).length,
    }),
    notices: async () => {
      const last = state.runs.at(-1);
      const failed: readonly Notice[] = last?.refusal
        ? [{ notice: 'backup-failed', refused: last.refusal.refused, path: String(last.refusal.path ?? place().path) }]
        : [];
      const good = lastGood();
      const age = Math.floor((clock() - (good?.at ?? state.since)) / DAY_MS);
      const newer = (await needs.head()) > (good?.seq ?? 0);
      const old: readonly Notice[] =
        newer && age > state.settings.allowedDays ? [{ notice: good ? 'backup-old' : 'backup-none', days: age }] : [];
      return [...failed, ...old];
    },
    begin: () => {
      timers.push(
        setTimeout(() => void look(), FIRST_MS),
        setInterval(() => void look(), EVERY_MS),
      );
      for (const timer of timers) timer.unref();
    },
    run: (why) => oneByOne(() => wholeRun(why)),
    look,
    set: (settings) => {
      try {
        for (const path of [settings.place, settings.keyPlace]) if (path !== null) markPlace(path);
      } catch (error) {
        return whyNotMarked(error, settings);
      }
      keep({ ...state, settings });
      return null;
    },
    afterErasure: () =>
      oneByOne(async () => {
        const missed: string[] = [];
        for (const at of state.keyPlaces) {
          const done = await needs.does(
            { task: 'make', folder, wallet: needs.wallet, to: null, key: keyPath(at) },
            stop.signal,
          );
          if (!('made' in done)) missed.push(at);
        }
        return missed;
      }),
    end: async () => {
      for (const timer of timers) clearTimeout(timer);
      const limit = AbortSignal.timeout(CLOSING_MS);
      const head = await needs.head().catch(() => 0);
      limit.addEventListener('abort', () => stop.abort(), { once: true });
      await running;
      if (!limit.aborted && head > (made().at(-1)?.seq ?? 0))
        await make('closing', limit).catch((error: unknown) => tellDefect('backup', error));
      stop.abort();
    },
  };
}

/** A disk that is full or may not be written to is there all the same: the run itself says what is wrong. */
function isThere(place: PlaceAt): boolean {
  try {
    return placeIsThere(place);
  } catch {
    return false;
  }
}

function refusalIn(done: TaskDone): Refusal {
  if ('refusal' in done) {
    const { refused, ...facts } = done.refusal;
    return hasWords(refused) ? { ...facts, refused } : { refused: 'backup-not-made', why: refused, path: facts.path };
  }
  return { refused: 'backup-not-made', why: 'failed' in done ? done.failed : '', path: '' };
}

const hasWords = (name: string): name is RefusalName => Object.hasOwn(refusals, name);

function whyNotMarked(error: unknown, { place, keyPlace }: BackupSettings): Refusal {
  const path = error instanceof Error && 'path' in error ? String(error.path) : (place ?? keyPlace ?? '');
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ENOENT' || code === 'ENOTDIR') return { refused: 'backup-place-missing', path, code };
  const refusal = refusalFromError(error, path);
  if (!refusal) throw error;
  return refusal;
}

function sameDisk(folder: string, place: string): boolean {
  const [ours, theirs] = [folder, place].map((path) => statSync(path, { throwIfNoEntry: false })?.dev);
  return ours !== undefined && (theirs === undefined || ours === theirs);
}
