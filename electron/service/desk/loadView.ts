import { yearOf } from '../../../core/calendar.ts';
import type { About } from '../../../core/commands/kernel/command.ts';
import { asItCounts } from '../../../core/custody/asItCounts.ts';
import type { Part } from '../../../core/custody/ledger.ts';
import type { Machine } from '../../../core/custody/machine.ts';
import type { View } from '../../../core/entries/view.ts';
import type { OwnerId, PartId } from '../../../core/ids.ts';
import type { Job } from '../../../core/job/job.ts';
import { isUnderWay } from '../../../core/job/work.ts';
import { noPeople } from '../../../core/people/people.ts';
import type { EpochMs } from '../../../core/time.ts';
import { jobsOfOwner, newestJobOf, openJobs, type Reader } from '../../../db/index.ts';

/**
 * Loads what a command is about, remembering the version of every stream it looked at.
 * @param past Loads what a command only looks past, and is not about: other jobs where the asker's hands are, rigs with what
 *   sits in them. Left out: the same.
 */
export async function loadView(
  read: Reader,
  about: About,
  at: EpochMs,
  by: string | null = null,
  past: Reader = read,
): Promise<View> {
  const shop = await read.load('shop');
  const people = about.people ? await read.load('people') : noPeople;
  const job = about.job ? await read.load('job', about.job) : null;
  const olderJob = about.olderJob ? await read.load('job', about.olderJob) : null;
  const newest = about.here ? await newestJobOf(read, about.here) : null;
  const last = newest ? await read.load('job', newest) : null;
  const here = last?.stage === 'gone-home' ? null : last;
  const ownerId = about.owner ?? job?.owner;
  const machineId = about.machine ?? job?.machine;
  const owner = ownerId ? await read.load('owner', ownerId) : null;
  const machine = machineId ? await read.load('machine', machineId) : null;
  const enquiry = about.enquiry ? await read.load('enquiry', about.enquiry) : null;
  const rigs = await loadRigs(past, shop.settings?.rigs ?? []);
  const own = [
    ...(machine?.parts ?? []),
    ...(job?.parts ?? []),
    ...(job?.questions ?? []).flatMap(({ offer }) => (offer ? [offer.part, offer.forPart] : [])),
    ...(about.parts ?? []),
  ];
  const parts = await loadParts(past, [...own, ...[...rigs.values()].flatMap((rig) => Object.values(rig.inside))], at);
  if (past !== read) await loadParts(read, own, at);
  const year = shop.settings ? yearOf(at, shop.settings.zone) : 0;
  const paperCounts = new Map<string, number>();
  for (const kind of about.papers ?? []) paperCounts.set(kind, await read.version(`paper:${kind}:${year}`));
  const elsewhere = about.hands && by !== null ? await jobsUnderWay(past, by, about.job) : [];
  const ownersJobs = about.ownersJobs && ownerId ? await allOf(read, ownerId) : undefined;
  return {
    ...(ownersJobs && { ownersJobs }),
    shop,
    people,
    job,
    elsewhere,
    olderJob,
    here,
    owner,
    machine,
    rigs,
    parts,
    enquiry,
    paperCounts,
  };
}

/** Every job of an owner; one that cannot be read keeps back whatever is decided on them (`setApartRefusal`). */
async function allOf(read: Reader, owner: OwnerId): Promise<readonly Job[]> {
  const jobs: Job[] = [];
  for (const id of await jobsOfOwner(read, owner)) {
    const job = await read.load('job', id);
    if (job) jobs.push(job);
  }
  return jobs;
}

/** Jobs other than this one on which somebody has work under way. */
async function jobsUnderWay(read: Reader, by: string, but: string | undefined): Promise<readonly Job[]> {
  const jobs: Job[] = [];
  for (const id of await openJobs(read)) {
    const job = id === but ? null : await read.load('job', id);
    if (job?.work.some((work) => work.by === by && isUnderWay(work))) jobs.push(job);
  }
  return jobs;
}

/** The parts of these ids that the journal knows, as they count at `at`, with what moves with them as one. */
export async function loadParts(read: Reader, ids: Iterable<PartId>, at: EpochMs): Promise<ReadonlyMap<PartId, Part>> {
  const parts = new Map<PartId, Part>();
  const wanted = new Set(ids);
  for (const id of wanted) {
    const part = await read.load('part', id);
    if (!part) continue;
    parts.set(id, asItCounts(part, at));
    if (part.place.at === 'with') wanted.add(part.place.part);
    for (const rider of part.riders) wanted.add(rider);
  }
  return parts;
}

async function loadRigs(read: Reader, names: readonly string[]): Promise<ReadonlyMap<string, Machine>> {
  const rigs = new Map<string, Machine>();
  for (const name of names) {
    const rig = await read.load('machine', name);
    if (rig) rigs.set(name, rig);
  }
  return rigs;
}
