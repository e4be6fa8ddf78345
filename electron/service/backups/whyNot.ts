import refusals from '../../../assets/words/en/refusals.json' with { type: 'json' };
import type { BackupSettings } from '../../../core/contract/backupSheet.ts';
import type { Refusal, RefusalName } from '../../../core/refusal.ts';
import { refusalFromError } from '../../../db/index.ts';
import type { TaskDone } from './backupTask.ts';

/** Why a task made no backup, as the task said or failed with. */
export function refusalOfTask(done: TaskDone): Refusal {
  if ('refusal' in done) {
    const { refused, ...facts } = done.refusal;
    return hasWords(refused) ? { ...facts, refused } : { refused: 'backup-not-made', why: refused, path: facts.path };
  }
  return { refused: 'backup-not-made', why: 'failed' in done ? done.failed : '', path: '' };
}

const hasWords = (name: string): name is RefusalName => Object.hasOwn(refusals, name);

/**
 * Why a folder could not be marked as the place for backups.
 * @throws What went wrong where that is no matter of the folder.
 */
export function whyNotMarked(error: unknown, { place, keyPlace }: BackupSettings): Refusal {
  const path = error instanceof Error && 'path' in error ? String(error.path) : (place ?? keyPlace ?? '');
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ENOENT' || code === 'ENOTDIR') return { refused: 'backup-place-missing', path, code };
  const refusal = refusalFromError(error, path);
  if (!refusal) throw error;
  return refusal;
}
