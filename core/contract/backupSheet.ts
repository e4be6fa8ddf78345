import { z } from 'zod';
import type { Refusal } from '../refusal.ts';
import type { EpochMs } from '../time.ts';

const zFolder = z.string().trim().min(1).max(1000).nullable();

/** How the shop has its backups made: where, how many stay, and after how many days without a good one it is told. */
export const zBackupSettings = z.strictObject({
  /** Null: beside the app's own things, on this computer's disk. */
  place: zFolder,
  keyPlace: zFolder,
  keep: z.strictObject({
    days: z.int().min(1).max(400),
    weeks: z.int().min(0).max(400),
    months: z.int().min(0).max(400),
  }),
  allowedDays: z.int().min(1).max(90),
});
export type BackupSettings = z.output<typeof zBackupSettings>;

/** One run: when, why, what it was made up to, and what came of it. */
export type BackupRun = {
  readonly at: EpochMs;
  readonly why: 'closing' | 'daily' | 'by-hand' | 'migration';
  /** Null: none was made. */
  readonly file: string | null;
  /** The last entry in it. */
  readonly seq: number;
  /** Tried out by bringing it back into a scratch folder. */
  readonly proved: 'whole' | 'broken' | 'not-yet';
  readonly refusal: Refusal | null;
};

/** What a screen shows of the shop's backups. */
export type BackupSheet = {
  readonly settings: BackupSettings;
  /** Where they really lie. */
  readonly place: string;
  readonly keyPlace: string;
  /** On the disk that the shop itself lies on: lost with it. */
  readonly sameDisk: boolean;
  readonly last: BackupRun | null;
  readonly lastGood: BackupRun | null;
  readonly kept: number;
};
