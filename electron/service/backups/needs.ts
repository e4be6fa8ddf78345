import type { BackupTask, TaskDone } from './backupTask.ts';

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
