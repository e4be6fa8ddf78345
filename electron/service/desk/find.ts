import type { Found } from '../../../core/contract/screens.ts';
import { parseTag } from '../../../core/custody/tag.ts';
import type { JobId, MachineId, OwnerId, PartId } from '../../../core/ids.ts';
import type { EpochMs } from '../../../core/time.ts';
import type { Reader } from '../../../db/index.ts';
import { loadView } from './loadView.ts';

/** What a tag belongs to: the open job of that machine, or the part; null when no such tag was issued. */
export async function byTag(read: Reader, text: string, at: EpochMs): Promise<Found | null> {
  const tag = parseTag(text);
  if (!tag) return null;
  const row = await read.rows((tables) =>
    tables.selectFrom('tag').where('tag', '=', tag).where('live', '=', 1).select('stream').executeTakeFirst(),
  );
  const [subject, id] = (row?.stream ?? '').split(':');
  if (subject === 'machine' && id) return machineFound(read, id as MachineId, at);
  if (subject === 'part' && id) return partFound(read, id as PartId, at);
  return null;
}

async function machineFound(read: Reader, machine: MachineId, at: EpochMs): Promise<Found> {
  const row = await read.rows((tables) =>
    tables
      .selectFrom('job_now')
      .where('machine', '=', machine)
      .orderBy('taken_in', 'desc')
      .select('job')
      .executeTakeFirst(),
  );
  const job = (row?.job ?? null) as JobId | null;
  const view = await loadView(read, job ? { job } : { machine }, at);
  return {
    is: job ? 'job' : 'machine',
    id: job ?? machine,
    job,
    title: view.machine?.called ?? machine,
    detail: view.job?.stage ?? '',
  };
}

async function partFound(read: Reader, part: PartId, at: EpochMs): Promise<Found> {
  const known = (await loadView(read, { parts: [part] }, at)).parts.get(part);
  const stay = await read.rows((tables) =>
    tables
      .selectFrom('part_stay')
      .where('part', '=', part)
      .where('until_seq', 'is', null)
      .select('job')
      .executeTakeFirst(),
  );
  return {
    is: 'part',
    id: part,
    job: (stay?.job ?? known?.reservedFor ?? null) as JobId | null,
    title: known?.name ?? part,
    detail: known?.place.at ?? '',
  };
}

/**
 * Finds jobs, owners, machines and papers by what was typed, newest first: names, machine names, paper numbers. One
 * and two letters are answered too. Reads the open jobs and the last ended ones.
 */
export async function find(read: Reader, typed: string, at: EpochMs): Promise<readonly Found[]> {
  const text = typed.trim().toLowerCase();
  if (text === '') return [];
  const tagged = await byTag(read, typed, at);
  const found: Found[] = tagged ? [tagged] : [];
  const rows = await read.rows((tables) =>
    tables.selectFrom('job_now').orderBy('last_seq', 'desc').limit(500).select(['job']).execute(),
  );
  for (const row of rows) {
    const view = await loadView(read, { job: row.job as JobId }, at);
    const name = view.owner?.name.value ?? '';
    const called = view.machine?.called ?? '';
    const paper = view.job?.papers.find((one) => one.number.toLowerCase().includes(text));
    if (paper && view.job)
      found.push({ is: 'paper', id: paper.number, job: view.job.id, title: paper.number, detail: name });
    if (view.job && (name.toLowerCase().includes(text) || called.toLowerCase().includes(text)))
      found.push({ is: 'job', id: view.job.id, job: view.job.id, title: name, detail: called });
    if (found.length >= 20) break;
  }
  return found;
}

/** Owners and machines that were known before by exactly this phone number, mail address or serial. */
export async function recognised(read: Reader, streams: readonly string[], at: EpochMs): Promise<readonly Found[]> {
  const found: Found[] = [];
  for (const stream of streams) {
    const [subject, id] = stream.split(':');
    if (subject === 'owner' && id) {
      const { owner } = await loadView(read, { owner: id as OwnerId }, at);
      if (owner?.name.value)
        found.push({
          is: 'owner',
          id,
          job: null,
          title: owner.name.value,
          detail: owner.reach.value?.phone ?? owner.reach.value?.mail ?? '',
        });
    }
    if (subject === 'machine' && id) found.push(await machineFound(read, id as MachineId, at));
  }
  return found;
}
