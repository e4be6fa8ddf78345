import { applyOwner, type Owner, type OwnerEntry } from '../approval/owner.ts';
import { applyPart, type Part, type PartEntry } from '../custody/ledger.ts';
import { applyMachine, type Machine, type MachineEntry } from '../custody/machine.ts';
import type { PartId } from '../ids.ts';
import { applyJob, type Written } from '../job/applyJob.ts';
import { applyEnquiry, type Enquiry, type EnquiryEntry } from '../job/enquiry.ts';
import type { JobEntry } from '../job/entries.ts';
import type { Job } from '../job/job.ts';
import { applyShop, type Shop, type ShopEntry } from '../job/shop.ts';
import type { Draft } from '../journal/entry.ts';

/** Everything a command may look at: the streams it named, folded. */
export type View = {
  readonly shop: Shop;
  readonly job: Job | null;
  /** Other jobs on which the asker has work under way, where their hands matter. */
  readonly elsewhere: readonly Job[];
  /** The older job, when one came back. */
  readonly olderJob: Job | null;
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
export function applyToView(view: View, draft: Draft, written: Written): View {
  const [subject, id] = draft.stream.split(':') as [string, string];
  const entry = { ...draft, ...written };
  switch (subject) {
    case 'shop':
      return { ...view, shop: applyShop(view.shop, entry as unknown as ShopEntry) };
    case 'owner':
      return { ...view, owner: applyOwner(view.owner, entry as unknown as OwnerEntry) };
    case 'machine':
      return applyMachineEntry(view, id, entry as unknown as MachineEntry);
    case 'part': {
      const part = applyPart(view.parts.get(id as PartId) ?? null, entry as unknown as PartEntry & Written);
      return part ? { ...view, parts: new Map(view.parts).set(part.id, part) } : view;
    }
    case 'job':
      if (view.olderJob && view.olderJob.id === id)
        return { ...view, olderJob: applyJob(view.olderJob, entry as unknown as JobEntry & Written) };
      if (view.elsewhere.some((job) => job.id === id))
        return { ...view, elsewhere: changed(view.elsewhere, id, entry) };
      return { ...view, job: applyJob(view.job, entry as unknown as JobEntry & Written) };
    case 'enquiry':
      return { ...view, enquiry: applyEnquiry(view.enquiry, entry as unknown as EnquiryEntry & Written) };
    case 'paper':
      return { ...view, paperCounts: new Map(view.paperCounts).set(id, (view.paperCounts.get(id) ?? 0) + 1) };
    default:
      return view;
  }
}

const changed = (jobs: readonly Job[], id: string, entry: unknown): readonly Job[] =>
  jobs.map((job) => (job.id === id ? (applyJob(job, entry as JobEntry & Written) ?? job) : job));

function applyMachineEntry(view: View, id: string, entry: MachineEntry): View {
  const rig = view.rigs.get(id);
  if (rig) {
    const next = applyMachine(rig, entry);
    return next ? { ...view, rigs: new Map(view.rigs).set(id, next) } : view;
  }
  return { ...view, machine: applyMachine(view.machine, entry) };
}
