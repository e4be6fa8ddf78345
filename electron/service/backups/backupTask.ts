import { z } from 'zod';
import { epochMs } from '../../../core/time.ts';
import { type BackupRefusal, checkBackup, fileWallet, makeBackup } from '../../../db/index.ts';

/** What is done beside the service: a backup with its key part, the key part alone, or trying out one that lies there. */
export const zBackupTask = z.discriminatedUnion('task', [
  z.strictObject({
    task: z.literal('make'),
    folder: z.string(),
    wallet: z.string(),
    to: z.string().nullable(),
    key: z.string(),
  }),
  z.strictObject({ task: z.literal('try'), file: z.string(), wallet: z.string(), key: z.string() }),
]);
export type BackupTask = z.infer<typeof zBackupTask>;

/** What came of it. `wrong`: what was found when it was tried out, a line each; none when it was whole. */
export type TaskDone =
  | { readonly made: { readonly at: number; readonly seq: number } }
  | { readonly tried: { readonly wrong: readonly string[] } }
  | { readonly refusal: BackupRefusal }
  | { readonly failed: string };

const BRANCH = 'main';

/** Does one task, by images of the shop's files: whoever works in it is not held up. */
export async function doBackupTask(task: BackupTask): Promise<TaskDone> {
  const clock = () => epochMs(Date.now());
  const wallet = fileWallet(task.wallet);
  if (task.task === 'make') {
    const made = await makeBackup({ folder: task.folder, branch: BRANCH, wallet, clock, to: task.to, key: task.key });
    return 'refused' in made ? { refusal: made } : { made: { at: made.at, seq: made.seq } };
  }
  const key = { path: task.key, opener: { by: 'wallet' as const, wallet } };
  const tried = await checkBackup({ file: task.file, branch: BRANCH, key, clock });
  if (tried === null) return { refusal: { refused: 'not-a-backup', path: task.file } };
  if ('refused' in tried) return { refusal: tried };
  return { tried: { wrong: tried.findings.map(({ seq, wrong, detail }) => `${seq} ${wrong} ${detail ?? ''}`.trim()) } };
}
