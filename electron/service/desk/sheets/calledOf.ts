import type { JobId } from '../../../../core/ids.ts';
import { jobNow, type Reader } from '../../../../db/index.ts';

/** By what a job goes in a list: its owner's name, else what its machine is called; the job itself is not folded for it. */
export async function calledOf(read: Reader, job: JobId): Promise<string | null> {
  const now = await jobNow(read, job);
  if (!now) return null;
  const owner = await read.load('owner', now.owner);
  return owner?.name.value ?? (await machineCalled(read, job));
}

/** What the machine of a job is called. */
export async function machineCalled(read: Reader, job: JobId): Promise<string | null> {
  const now = await jobNow(read, job);
  return now ? ((await read.load('machine', now.machine))?.called ?? null) : null;
}
