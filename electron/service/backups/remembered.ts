import { join } from 'node:path';
import type { BackupRun } from '../../../core/contract/backupSheet.ts';
import { type BackupState, readState, writeState } from './backupState.ts';
import type { BackupNeeds } from './needs.ts';
import type { PlaceAt } from './places.ts';

/** What is remembered of a shop's backups: how each went, where they and their key parts lie. */
export type Remembered = {
  readonly state: () => BackupState;
  readonly keep: (next: BackupState) => void;
  readonly place: () => PlaceAt;
  readonly keyPlace: () => PlaceAt;
  /** Runs that made a file, the oldest first. */
  readonly made: () => readonly BackupRun[];
  readonly lastGood: () => BackupRun | null;
  readonly remember: (run: BackupRun) => BackupRun;
  /** What trying a file out came to. */
  readonly proved: (file: string, done: Pick<BackupRun, 'proved' | 'refusal'>) => void;
};

/** Reads what is remembered beside the shop. What cannot be written down is told, and remembered until the service ends. */
export function openRemembered({
  folder,
  app,
  shopId,
  clock,
  tellDefect,
}: Pick<BackupNeeds, 'folder' | 'app' | 'shopId' | 'clock' | 'tellDefect'>): Remembered {
  const path = join(folder, 'backups.json');
  let state = readState(path, clock());
  const keep = (next: BackupState) => {
    state = next;
    try {
      writeState(path, next);
    } catch (error) {
      tellDefect('backups-remembered', error);
    }
  };
  const chosen = (named: string | null, usual: string): PlaceAt => ({
    path: named ?? join(app, usual, shopId),
    own: named === null,
  });
  const keyPlace = () => chosen(state.settings.keyPlace, 'backup-keys');
  const made = () => state.runs.filter(({ file }) => file !== null);
  return {
    state: () => state,
    keep,
    place: () => chosen(state.settings.place, 'backups'),
    keyPlace,
    made,
    lastGood: () => made().findLast(({ proved }) => proved === 'whole') ?? null,
    remember: (run) => {
      keep({ ...state, runs: [...state.runs, run], keyPlaces: [...new Set([...state.keyPlaces, keyPlace().path])] });
      return run;
    },
    proved: (file, done) =>
      keep({ ...state, runs: state.runs.map((run) => (run.file === file ? { ...run, ...done } : run)) }),
  };
}
