import type { PartEntry } from '../custody/ledger.ts';
import type { MachineEntry } from '../custody/machine.ts';
import type { EnquiryEntry } from '../job/enquiry.ts';
import type { JobEntry } from '../job/entries.ts';
import type { ShopEntry } from '../job/shop.ts';
import type { OwnerEntry } from '../word/owner.ts';
import type { PaperEntry } from '../word/paperIssued.ts';

/** Every entry kind by the subject of its stream. A new kind is added to its subject's union and here; nowhere else. */
export type AnyEntry = ShopEntry | OwnerEntry | MachineEntry | PartEntry | JobEntry | EnquiryEntry | PaperEntry;

type KindsOf<E extends { readonly kind: string }> = { readonly [K in E['kind']]: number };

/** The newest version of each kind's body. */
export const ENTRY_KINDS = {
  shop: {
    'shop-opened': 1,
    'shop-changed': 1,
    'staff-changed': 1,
    'tag-voided': 1,
    'model-used': 1,
    'model-gone-back': 1,
    'priors-learnt': 1,
    'priors-reset': 1,
  } satisfies KindsOf<ShopEntry>,
  owner: { 'owner-known': 1, 'owner-changed': 1 } satisfies KindsOf<OwnerEntry>,
  machine: {
    'machine-known': 1,
    'machine-tagged': 1,
    'own-report-read': 2,
    'slots-written': 1,
    'switches-answered': 1,
    'part-at-taking-in': 1,
    'slot-filled': 1,
    'slot-emptied': 1,
    unplugged: 1,
    'plugged-in': 1,
  } satisfies KindsOf<MachineEntry>,
  part: {
    'part-known': 1,
    'part-tagged': 1,
    'part-moved': 1,
    'part-standing': 1,
    'part-corrected': 1,
    'part-lent': 1,
    'rider-joined': 1,
    'rider-left': 1,
    'part-reserved': 1,
    'part-released': 1,
    'part-sold': 1,
  } satisfies KindsOf<PartEntry>,
  job: {
    'taken-in': 1,
    'sheet-signed': 1,
    'consent-signed-alone': 1,
    'consent-answered': 1,
    'consent-withdrawn': 1,
    'asked-before-first-screw': 1,
    'thing-found': 1,
    'ours-on': 1,
    'ours-off': 1,
    photographed: 1,
    'secret-sealed': 1,
    'secret-wiped': 1,
    'told-corrected': 1,
    seen: 1,
    'could-not-be-reproduced': 1,
    'stage-entered': 1,
    'work-started': 1,
    'work-turned': 1,
    'work-finished': 1,
    'work-struck': 1,
    noted: 1,
    estimated: 1,
    promised: 1,
    asked: 1,
    tried: 1,
    answered: 1,
    'question-lapsed': 1,
    'word-withdrawn': 1,
    'charge-booked': 1,
    paid: 1,
    'sold-fitted': 1,
    judged: 1,
    'verdict-struck': 1,
    'part-ordered': 1,
    'part-received': 1,
    sold: 1,
    'part-joined': 1,
    incident: 1,
    'incident-told': 1,
    'left-like-this': 1,
    'left-confirmed': 1,
    'told-ready': 1,
    reminded: 1,
    'handed-over': 1,
    'came-back': 1,
    'paper-named': 1,
  } satisfies KindsOf<JobEntry>,
  enquiry: {
    enquired: 1,
    'enquiry-answered': 1,
    'enquiry-lapsed': 1,
    'enquiry-came': 1,
  } satisfies KindsOf<EnquiryEntry>,
  paper: { 'paper-issued': 1 } satisfies KindsOf<PaperEntry>,
} as const;
