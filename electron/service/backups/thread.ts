import { parentPort, workerData } from 'node:worker_threads';
import { doBackupTask, type TaskDone, zBackupTask } from './backupTask.ts';

// The thread's whole life: one task, beside the service.
const done: TaskDone = await doBackupTask(zBackupTask.parse(workerData)).catch((error: unknown) => ({
  failed: String(error),
}));
parentPort?.postMessage(done);
