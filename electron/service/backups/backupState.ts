import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { z } from 'zod';
import refusals from '../../../assets/words/en/refusals.json' with { type: 'json' };
import { USUAL_RULE } from '../../../core/backups/keepRule.ts';
import { type BackupRun, type BackupSettings, zBackupSettings } from '../../../core/contract/backupSheet.ts';
import { refusalNamed } from '../../../core/text/wordsFor.ts';
import { epochMsShape } from '../../../core/time.ts';

/** What is remembered of the shop's backups, beside its journal. */
export type BackupState = {
  readonly settings: BackupSettings;
  /** When backups were first looked after here. */
  readonly since: number;
  /** Folders in which a key part of this shop lies or lay: each is replaced wherever it can be reached. */
  readonly keyPlaces: readonly string[];
  /** Newest last. */
  readonly runs: readonly BackupRun[];
};

export const USUAL_SETTINGS: BackupSettings = { place: null, keyPlace: null, keep: USUAL_RULE, allowedDays: 3 };
const MOST_RUNS = 500;

const zRefusal = z
  .looseObject({ refused: z.string() })
  .transform((kept) => ({ ...kept, refused: refusalNamed(kept.refused, refusals) }));
const zState = z.strictObject({
  settings: zBackupSettings,
  since: z.number(),
  keyPlaces: z.array(z.string()),
  runs: z.array(
    z.strictObject({
      at: epochMsShape,
      why: z.enum(['closing', 'daily', 'by-hand', 'migration']),
      file: z.string().nullable(),
      seq: z.int(),
      proved: z.enum(['whole', 'broken', 'not-yet']),
      refusal: zRefusal.nullable(),
    }),
  ),
});

/** Reads it; what is not there or cannot be read is begun anew: the backups themselves are found by their names. */
export function readState(path: string, now: number): BackupState {
  try {
    return zState.parse(JSON.parse(readFileSync(path, 'utf8')));
  } catch {
    return { settings: USUAL_SETTINGS, since: now, keyPlaces: [], runs: [] };
  }
}

/** Keeps it. @throws What the file system says. */
export function writeState(path: string, state: BackupState): void {
  writeFileSync(`${path}.new`, JSON.stringify({ ...state, runs: state.runs.slice(-MOST_RUNS) }), { mode: 0o600 });
  renameSync(`${path}.new`, path);
}
