import { applyOwner, type Owner } from '../approval/owner.ts';
import { applyPart, type Part } from '../custody/ledger.ts';
import { applyMachine, type Machine } from '../custody/machine.ts';
import { applyJob, type Written } from '../job/applyJob.ts';
import { applyEnquiry, type Enquiry } from '../job/enquiry.ts';
import type { Job } from '../job/job.ts';
import { applyShop, noShop, type Shop } from '../job/shop.ts';
import type { KindOf, SubjectEntry } from './entryTable.ts';

/** What a stream of each subject tells when it is folded; null before its first entry. */
export type States = {
  readonly shop: Shop;
  readonly owner: Owner | null;
  readonly machine: Machine | null;
  readonly part: Part | null;
  readonly job: Job | null;
  readonly enquiry: Enquiry | null;
};
export type Folded = keyof States;

export type Fold<S extends Folded> = {
  readonly none: States[S];
  /** The kind that begins such a stream, and stands in it once; null: any. */
  readonly begins: KindOf<S> | null;
  readonly apply: (state: States[S], entry: SubjectEntry<S> & Written) => States[S];
};

/** How the streams of each subject are folded. */
export const FOLDS: { readonly [S in Folded]: Fold<S> } = {
  shop: { none: noShop, begins: null, apply: applyShop },
  owner: { none: null, begins: 'owner-known', apply: applyOwner },
  machine: { none: null, begins: 'machine-known', apply: applyMachine },
  part: { none: null, begins: 'part-known', apply: applyPart },
  job: { none: null, begins: 'taken-in', apply: applyJob },
  enquiry: { none: null, begins: 'enquired', apply: applyEnquiry },
};
