import type { Owner } from '../approval/owner.ts';
import type { Part } from '../custody/ledger.ts';
import type { Machine, MachineEntry } from '../custody/machine.ts';
import type { PartId } from '../ids.ts';
import type { Enquiry } from '../job/enquiry.ts';
import type { JobEntry } from '../job/entries.ts';
import type { Job } from '../job/job.ts';
import type { Shop } from '../job/shop.ts';
import type { Written } from '../journal/written.ts';
import type { People } from '../people/people.ts';
import { foldOf } from './entryTable.ts';
import { type AnyEntry, idIn, isOf } from './subjects.ts';

/** Everything a command may look at: the streams it named, folded. */
export type View = {
  readonly shop: Shop;
  /** How the shop's people get in; as if nothing was set, where a command does not look at it. */
  readonly people: People;
  readonly job: Job | null;
  /** Other jobs on which the asker has work under way, where their hands matter. */
  readonly elsewhere: readonly Job[];
  /** Every job of the owner, where a command asks for them. */
  readonly ownersJobs?: readonly Job[];
  /** The older job, when one came back. */
  readonly olderJob: Job | null;
  /** The job that a known machine has now, where it is to be taken in. */
  readonly here: Job | null;
  readonly owner: Owner | null;
  readonly machine: Machine | null;
  /** Second rigs by name. */
  readonly rigs: ReadonlyMap<string, Machine>;
  readonly parts: ReadonlyMap<PartId, Part>;
  readonly enquiry: Enquiry | null;
  /** Papers issued so far this year, by kind. */
  readonly paperCounts: ReadonlyMap<string, number>;
};

/** The view after one more entry, as the journal would tell it: lets a command decide on what it has just decided. */
export function applyToView(view: View, entry: AnyEntry, written: Written): View {
  if (isOf('shop', entry)) return { ...view, shop: foldOf('shop').apply(view.shop, { ...entry, ...written }) };
  if (isOf('people', entry)) return { ...view, people: foldOf('people').apply(view.people, { ...entry, ...written }) };
  if (isOf('owner', entry)) return { ...view, owner: foldOf('owner').apply(view.owner, { ...entry, ...written }) };
  if (isOf('machine', entry)) return withMachine(view, { ...entry, ...written });
  if (isOf('part', entry)) {
    const part = foldOf('part').apply(view.parts.get(idIn(entry.stream)) ?? null, { ...entry, ...written });
    return part ? { ...view, parts: new Map(view.parts).set(part.id, part) } : view;
  }
  if (isOf('job', entry)) return withJob(view, { ...entry, ...written });
  if (isOf('enquiry', entry))
    return { ...view, enquiry: foldOf('enquiry').apply(view.enquiry, { ...entry, ...written }) };
  const [, kind = ''] = entry.stream.split(':');
  return { ...view, paperCounts: new Map(view.paperCounts).set(kind, (view.paperCounts.get(kind) ?? 0) + 1) };
}

function withJob(view: View, entry: JobEntry & Written): View {
  const { apply } = foldOf('job');
  const id = idIn(entry.stream);
  if (view.olderJob?.id === id) return { ...view, olderJob: apply(view.olderJob, entry) };
  if (!view.elsewhere.some((job) => job.id === id)) return { ...view, job: apply(view.job, entry) };
  return { ...view, elsewhere: view.elsewhere.map((job) => (job.id === id ? (apply(job, entry) ?? job) : job)) };
}

function withMachine(view: View, entry: MachineEntry & Written): View {
  const { apply } = foldOf('machine');
  const id = idIn(entry.stream);
  const rig = view.rigs.get(id);
  if (!rig) return { ...view, machine: apply(view.machine, entry) };
  const next = apply(rig, entry);
  return next ? { ...view, rigs: new Map(view.rigs).set(id, next) } : view;
}
