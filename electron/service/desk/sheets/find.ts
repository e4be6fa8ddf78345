import type { FindHit } from '../../../../core/contract/screens.ts';
import type { Tag } from '../../../../core/custody/part.ts';
import { formatTag, parseTag } from '../../../../core/custody/tag.ts';
import { idIn, isStreamOf } from '../../../../core/entries/subjects.ts';
import type { JobId, MachineId, PartId } from '../../../../core/ids.ts';

import type { Stream } from '../../../../core/journal/entry.ts';
import type { EpochMs } from '../../../../core/time.ts';
import {
  jobThatHas,
  latestJobsNow,
  newestJobOf,
  papersNumbered,
  type Reader,
  streamOfTag,
  streamOfVoidTag,
  type TagHolder,
} from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';
import { asFarAsReadable } from '../setApart.ts';
import { jobsIn, knownOf } from './setApartJobs.ts';

/** What a tag belongs to: the open job of that machine, or the part; null when no such tag was issued. */
export async function byTag(read: Reader, text: string, at: EpochMs): Promise<FindHit | null> {
  const tag = parseTag(text);
  if (!tag) return null;
  const stream = await streamOfTag(read, tag);
  return stream === null ? voidTag(read, tag, at) : taggedFound(read, stream, at);
}

/** The machine or part that a tag hangs on; null for what bears none. */
async function taggedFound(read: Reader, stream: TagHolder, at: EpochMs): Promise<FindHit | null> {
  if (isStreamOf('machine', stream)) return machineFound(read, idIn(stream), at);
  return isStreamOf('part', stream) ? partFound(read, idIn(stream), at) : null;
}

/** A tag that was made void, or whose part or machine got another one: what it hung on, to be tagged anew. */
async function voidTag(read: Reader, tag: Tag, at: EpochMs): Promise<FindHit | null> {
  const stream = await streamOfVoidTag(read, tag);
  if (stream === null) return null;
  const hungOn = await taggedFound(read, stream, at);
  return { is: 'void-tag', id: tag, job: null, stage: null, title: formatTag(tag), detail: hungOn?.title ?? '' };
}

async function machineFound(read: Reader, machine: MachineId, at: EpochMs): Promise<FindHit> {
  const job = await newestJobOf(read, machine);
  const view = await loadView(asFarAsReadable(read), job ? { job, machine } : { machine }, at);
  return {
    is: job ? 'job' : 'machine',
    id: job ?? machine,
    job,
    // Where entries cannot be read, what is known of it stands at the counter.
    stage: job && (await read.load('job', job)) ? (view.job?.stage ?? null) : null,
    title: view.machine?.called ?? machine,
    detail: view.job?.stage ?? '',
  };
}

async function partFound(read: Reader, part: PartId, at: EpochMs): Promise<FindHit> {
  const known = (await loadView(read, { parts: [part] }, at)).parts.get(part);
  return {
    is: 'part',
    id: part,
    job: (await jobThatHas(read, part)) ?? known?.reservedFor ?? null,
    stage: null,
    title: known?.name ?? part,
    detail: known?.place.at ?? '',
  };
}

/** How many jobs a search goes through, newest first. */
const SEARCHED = 500;
/** As many are shown. */
const MOST_FOUND = 20;

/**
 * Finds jobs, owners, machines and papers by what was typed, newest first: names, machine names, paper numbers. One
 * and two letters are answered too. Reads the open jobs and the last ended ones, and those in streams that are set
 * apart as far as they can be read.
 */
export async function find(
  read: Reader,
  typed: string,
  at: EpochMs,
  apart: ReadonlySet<Stream> = new Set(),
): Promise<readonly FindHit[]> {
  const text = typed.trim().toLowerCase();
  if (text === '') return [];
  const tagged = await byTag(read, typed, at);
  const found: FindHit[] = tagged ? [tagged] : [];
  for (const { number, job } of await papersNumbered(read, text, MOST_FOUND)) {
    const known = job && (await jobKnown(read, job, at));
    if (known) found.push({ is: 'paper', id: number, job, stage: known.stage, title: number, detail: known.name });
  }
  for (const id of new Set([...(await namedSo(read, text)), ...jobsIn(apart)])) {
    if (found.length >= MOST_FOUND) break;
    const { name, called, stage } = await jobKnown(read, id, at);
    if (name.toLowerCase().includes(text) || called.toLowerCase().includes(text))
      found.push({ is: 'job', id, job: id, stage, title: name || called, detail: called });
  }
  return found;
}

/** What is said of a job that is found; no stage where entries of it cannot be read. */
async function jobKnown(read: Reader, job: JobId, at: EpochMs) {
  const { name, called, stage, unreadable } = await knownOf(read, job, at);
  return { name, called, stage: unreadable.length > 0 ? null : stage };
}

/** The latest jobs whose owner or machine is called so; the jobs themselves are not folded for it. */
async function namedSo(read: Reader, text: string): Promise<readonly JobId[]> {
  const readable = asFarAsReadable(read);
  const jobs: JobId[] = [];
  for (const { job, owner, machine } of await latestJobsNow(read, SEARCHED)) {
    const names = [
      (await readable.load('owner', owner))?.name.value,
      (await readable.load('machine', machine))?.called,
    ];
    if (names.some((name) => name?.toLowerCase().includes(text))) jobs.push(job);
    if (jobs.length >= MOST_FOUND) break;
  }
  return jobs;
}

/** Owners and machines that were known before by exactly this phone number, mail address or serial. */
export async function recognised(read: Reader, streams: readonly Stream[], at: EpochMs): Promise<readonly FindHit[]> {
  const found: FindHit[] = [];
  for (const stream of streams) {
    if (isStreamOf('owner', stream)) {
      const id = idIn(stream);
      const { owner } = await loadView(read, { owner: id }, at);
      if (owner?.name.value)
        found.push({
          is: 'owner',
          id,
          job: null,
          stage: null,
          title: owner.name.value,
          detail: owner.reach.value?.phone ?? owner.reach.value?.mail ?? '',
        });
    }
    if (isStreamOf('machine', stream)) found.push(await machineFound(read, idIn(stream), at));
  }
  return found;
}
