import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Keepable, whichToKeep } from '../../../core/backups/keepRule.ts';
import type { BackupRun } from '../../../core/contract/backupSheet.ts';
import type { Refusal } from '../../../core/refusal.ts';
import { epochMs } from '../../../core/time.ts';
import type { BackupNeeds } from './needs.ts';
import { backupName, backupsIn, keyPartName, type PlaceAt, placeIsThere, shortShop, sweepHalves } from './places.ts';
import type { Remembered } from './remembered.ts';
import { refusalOfTask } from './whyNot.ts';

/** What is done for one backup, step by step. */
export type Runs = {
  /** Makes one; a run that made no file says why. */
  readonly make: (why: BackupRun['why'], signal: AbortSignal) => Promise<BackupRun>;
  /** Brings one back on trial and checks it wholly. */
  readonly tryOut: (run: BackupRun) => Promise<void>;
  /** Makes one, tries it out, and leaves out those that need not be kept any more. */
  readonly whole: (why: BackupRun['why']) => Promise<BackupRun>;
  /** Replaces the key part in a folder. @returns Whether it could be. */
  readonly replaceKeyPart: (at: string) => Promise<boolean>;
};

export function openRuns(needs: BackupNeeds, remembered: Remembered, stop: AbortSignal): Runs {
  const { folder, wallet, clock, does, tellDefect } = needs;
  const { place, keyPlace, remember, proved, made, state } = remembered;
  const shop = shortShop(needs.shopId);
  const keyPath = (at: string) => join(at, keyPartName(shop));

  const make: Runs['make'] = async (why, signal) => {
    const at = epochMs(clock());
    const none = (refusal: Refusal): BackupRun => ({ at, why, file: null, seq: 0, proved: 'not-yet', refusal });
    const file = join(place().path, backupName(shop, at));
    for (const one of [place(), keyPlace()])
      if (!isThere(one)) return remember(none({ refused: 'backup-place-missing', path: one.path, code: 'ENOENT' }));
    sweepHalves(place().path, shop);
    const done = await does({ task: 'make', folder, wallet, to: file, key: keyPath(keyPlace().path) }, signal);
    if ('made' in done) return remember({ at, why, file, seq: done.made.seq, proved: 'not-yet', refusal: null });
    return remember(none(refusalOfTask(done)));
  };
  const tryOut: Runs['tryOut'] = async ({ file }) => {
    if (file === null) return;
    const done = await does({ task: 'try', file, wallet, key: keyPath(keyPlace().path) }, stop);
    if (stop.aborted) return;
    if (!('tried' in done)) return proved(file, { proved: 'broken', refusal: refusalOfTask(done) });
    const { wrong } = done.tried;
    if (wrong.length === 0) return proved(file, { proved: 'whole', refusal: null });
    const refusal = { refused: 'backup-not-whole', path: file, count: wrong.length, first: wrong[0] ?? '' } as const;
    proved(file, { proved: 'broken', refusal });
  };
  const thin = async () => {
    const known = new Map(made().map((run) => [run.file, run.proved]));
    const all = backupsIn(place().path, shop).map((one): Keepable & typeof one => ({
      ...one,
      proved: known.get(one.file) ?? 'not-yet',
    }));
    const stays = whichToKeep(all, state().settings.keep, await needs.zone());
    for (const one of all) if (!stays.has(one)) rmSync(one.file, { force: true });
  };
  return {
    make,
    tryOut,
    whole: async (why) => {
      const run = await make(why, stop);
      await tryOut(run);
      try {
        if (run.file !== null) await thin();
      } catch (error) {
        tellDefect('backups-thinned', error);
      }
      return state().runs.findLast(({ at, file }) => at === run.at && file === run.file) ?? run;
    },
    replaceKeyPart: async (at) =>
      'made' in (await does({ task: 'make', folder, wallet, to: null, key: keyPath(at) }, stop)),
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
