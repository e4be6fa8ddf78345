import { statSync } from 'node:fs';
import type { BackupRun, BackupSettings, BackupSheet } from '../../../core/contract/backupSheet.ts';
import type { Notice } from '../../../core/contract/standing.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { DAY_MS, MINUTE_MS } from '../../../core/time.ts';
import type { BackupNeeds } from './needs.ts';
import { backupsIn, markPlace, shortShop } from './places.ts';
import { openRemembered, type Remembered } from './remembered.ts';
import { openRuns } from './runs.ts';
import { whyNotMarked } from './whyNot.ts';

/** Looked at so often whether one is due. */
const EVERY_MS = 15 * MINUTE_MS;
/** The first look after a start waits until the morning's rush is over. */
const FIRST_MS = 2 * MINUTE_MS;
/** What the last one may take when the shop closes: the window waits five seconds in all. */
const CLOSING_MS = 3_000;

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
  const { clock, tellDefect } = needs;
  const stop = new AbortController();
  const remembered = openRemembered(needs);
  const { state, keep, made } = remembered;
  const runs = openRuns(needs, remembered, stop.signal);
  let running: Promise<unknown> = Promise.resolve();
  const oneByOne = <T>(work: () => Promise<T>): Promise<T> => {
    const done = running.then(work, work);
    running = done.catch(() => undefined);
    return done;
  };
  const look = () =>
    oneByOne(async () => {
      const last = made().at(-1);
      const due = !last || clock() - last.at >= DAY_MS || clock() < last.at;
      if (due && (await needs.head()) > (last?.seq ?? 0)) await runs.whole('daily');
      else if (last?.proved === 'not-yet') await runs.tryOut(last);
    }).catch((error: unknown) => tellDefect('backup', error));
  const timers: NodeJS.Timeout[] = [];

  return {
    sheet: () => sheetOf(needs, remembered),
    notices: async () => noticesOf(remembered, await needs.head(), clock()),
    begin: () => {
      timers.push(
        setTimeout(() => void look(), FIRST_MS),
        setInterval(() => void look(), EVERY_MS),
      );
      for (const timer of timers) timer.unref();
    },
    run: (why) => oneByOne(() => runs.whole(why)),
    look,
    set: (settings) => {
      try {
        for (const path of [settings.place, settings.keyPlace]) if (path !== null) markPlace(path);
      } catch (error) {
        return whyNotMarked(error, settings);
      }
      keep({ ...state(), settings });
      return null;
    },
    afterErasure: () =>
      oneByOne(async () => {
        const missed: string[] = [];
        for (const at of state().keyPlaces) if (!(await runs.replaceKeyPart(at))) missed.push(at);
        return missed;
      }),
    end: async () => {
      for (const timer of timers) clearTimeout(timer);
      const limit = AbortSignal.timeout(CLOSING_MS);
      const head = await needs.head().catch(() => 0);
      limit.addEventListener('abort', () => stop.abort(), { once: true });
      await running;
      if (!limit.aborted && head > (made().at(-1)?.seq ?? 0))
        await runs.make('closing', limit).catch((error: unknown) => tellDefect('backup', error));
      stop.abort();
    },
  };
}

function sheetOf({ folder, shopId }: BackupNeeds, { state, place, keyPlace, lastGood }: Remembered): BackupSheet {
  return {
    settings: state().settings,
    place: place().path,
    keyPlace: keyPlace().path,
    sameDisk: sameDisk(folder, place().path),
    last: state().runs.at(-1) ?? null,
    lastGood: lastGood(),
    kept: backupsIn(place().path, shortShop(shopId)).length,
  };
}

/** What the shop is told of its backups: the last failed, or the last good one is older than it allows and entries came since. */
function noticesOf({ state, place, lastGood }: Remembered, head: number, now: number): readonly Notice[] {
  const { runs, since, settings } = state();
  const last = runs.at(-1);
  const failed: readonly Notice[] = last?.refusal
    ? [{ notice: 'backup-failed', refused: last.refusal.refused, path: String(last.refusal.path ?? place().path) }]
    : [];
  const good = lastGood();
  const age = Math.floor((now - (good?.at ?? since)) / DAY_MS);
  const old: readonly Notice[] =
    head > (good?.seq ?? 0) && age > settings.allowedDays
      ? [{ notice: good ? 'backup-old' : 'backup-none', days: age }]
      : [];
  return [...failed, ...old];
}

function sameDisk(folder: string, place: string): boolean {
  const [ours, theirs] = [folder, place].map((path) => statSync(path, { throwIfNoEntry: false })?.dev);
  return ours !== undefined && (theirs === undefined || ours === theirs);
}
