import type { SetApartJob } from '../../../../core/contract/screens.ts';
import { idIn, isStreamOf } from '../../../../core/entries/subjects.ts';
import type { JobId } from '../../../../core/ids.ts';
import type { Stream } from '../../../../core/journal/entry.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { jobNow, openJobs, type Reader } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { asFarAsReadable, unreadableIn } from '../setApart.ts';

/** The jobs among streams that are set apart: also those of which so little can be read that no list has them. */
export const jobsIn = (streams: Iterable<Stream>): readonly JobId[] =>
  [...streams].flatMap((stream) => (isStreamOf('job', stream) ? [idIn(stream)] : []));

/** What can be said of a job that may be set apart: from what can be read, and from the lists where that says nothing. */
export async function knownOf(read: Reader, job: JobId, at: EpochMs) {
  const readable = asFarAsReadable(read);
  const alone = await loadView(readable, { job }, at);
  const listed = alone.job ? null : await jobNow(read, job);
  const view = listed ? await loadView(readable, { owner: listed.owner, machine: listed.machine }, at) : alone;
  const tag = view.machine?.tag ?? alone.job?.tag ?? listed?.tag ?? null;
  const { owner, machine } = alone.job ?? listed ?? {};
  const streams = new Set([`job:${job}`, `owner:${owner}`, `machine:${machine}`]);
  return {
    job: alone.job,
    name: view.owner?.name.value ?? '',
    called: view.machine?.called ?? '',
    tag,
    stage: alone.job?.stage ?? listed?.stage ?? null,
    unreadable: unreadableIn(read, streams),
  };
}

/**
 * Jobs that have not gone home, as far as anybody can tell, and are on no line: their own entries, or their machine's,
 * cannot be read. `apart`: streams in which such entries were met.
 */
export async function setApartJobs(
  read: Reader,
  apart: ReadonlySet<Stream>,
  at: EpochMs,
): Promise<readonly SetApartJob[]> {
  const found: SetApartJob[] = [];
  for (const job of new Set([...(await openJobs(read)), ...jobsIn(apart)])) {
    const whole = await read.load('job', job);
    if (whole && (await read.load('machine', whole.machine))) continue;
    const { name, called, tag, stage, unreadable } = await knownOf(read, job, at);
    if (stage !== 'gone-home') found.push({ job, called: name || called, tag, stage, unreadable });
  }
  return found;
}
