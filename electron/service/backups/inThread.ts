import { Worker } from 'node:worker_threads';
import type { BackupTask, TaskDone } from './backupTask.ts';

/** Beside this file when run from the sources, beside the built service when built. */
const SCRIPT = new URL(import.meta.url.endsWith('.ts') ? './thread.ts' : './backups.mjs', import.meta.url);

/** Does a task in a thread of its own. @param stop Ends it early: then it failed, and no half file lies under a final name. */
export function inThread(task: BackupTask, stop: AbortSignal): Promise<TaskDone> {
  return new Promise((resolve) => {
    const worker = new Worker(SCRIPT, { execArgv: [], name: 'knowngood-backups', workerData: task });
    const end = () => void worker.terminate();
    if (stop.aborted) end();
    stop.addEventListener('abort', end, { once: true });
    worker.once('message', (done: TaskDone) => resolve(done));
    worker.once('error', (error) => resolve({ failed: String(error) }));
    worker.once('exit', (code) => {
      stop.removeEventListener('abort', end);
      resolve({ failed: String(code) });
    });
    worker.unref();
  });
}
