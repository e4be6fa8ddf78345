import type { z } from 'zod';
import { applyOwner, OWNER_BODIES, type Owner } from '../approval/owner.ts';
import { applyPart, PART_BODIES, type Part } from '../custody/ledger.ts';
import { applyMachine, MACHINE_BODIES, type Machine } from '../custody/machine.ts';
import { applyJob } from '../job/applyJob.ts';
import { applyEnquiry, ENQUIRY_BODIES, type Enquiry } from '../job/enquiry.ts';
import { JOB_BODIES } from '../job/entries.ts';
import type { Job } from '../job/job.ts';
import { applyShop, noShop, SHOP_BODIES, type Shop } from '../job/shop.ts';
import type { Written } from '../journal/written.ts';
import { applyPeople, noPeople, PEOPLE_BODIES, type People } from '../people/people.ts';
import { keysOf } from '../table.ts';
import { PAPER_BODIES } from './paperIssued.ts';
import { sealedSince } from './sealedTexts.ts';
import type { Bodies, KindOf, Subject, SubjectEntry } from './subjects.ts';

/** What a stream of each subject tells when it is folded; null before its first entry. Papers are read entry by entry. */
export type States = {
  readonly shop: Shop;
  readonly people: People;
  readonly owner: Owner | null;
  readonly machine: Machine | null;
  readonly part: Part | null;
  readonly job: Job | null;
  readonly enquiry: Enquiry | null;
};
export type Folded = keyof States;

/** How the streams of a subject are folded. */
export type Fold<S extends Folded> = {
  readonly none: States[S];
  /** The kind that begins such a stream, and stands in it once; null: any. */
  readonly begins: KindOf<S> | null;
  readonly apply: (state: States[S], entry: SubjectEntry<S> & Written) => States[S];
};

type Kinds<S extends Subject> = {
  /** Each kind with the shape of its body: what it refuses is neither written nor read. */
  readonly bodies: { readonly [Kind in KindOf<S>]: z.ZodType<Bodies[S][Kind]> };
  /**
   * Versions of those bodies that have changed; all others are in their first, or in that since which texts of theirs lie
   * sealed (`SEALED_TEXTS`).
   */
  readonly versions: { readonly [Kind in KindOf<S>]?: number };
  /** Kinds that are also written where an entry of their stream cannot be read; each says why. Left out: none. */
  readonly setApartToo?: readonly KindOf<S>[];
};

/**
 * Every entry there is: by subject its kinds, their bodies' shapes and versions, and how they are folded. A new kind
 * is written down with its subject; one whose body changes gets its new version here and a lift from the old.
 */
export const ENTRY_TABLE: {
  readonly [S in Subject]: Kinds<S> & (S extends Folded ? { readonly fold: Fold<S> } : { readonly fold?: never });
} = {
  shop: { bodies: SHOP_BODIES, versions: {}, fold: { none: noShop, begins: null, apply: applyShop } },
  people: {
    bodies: PEOPLE_BODIES,
    versions: {},
    // The counts of wrong tries are added up, whatever else stands there, and decide nothing themselves. Were they held
    // back, whoever guesses would begin at no wait again with each start of the service.
    setApartToo: ['secret-missed', 'secret-met'],
    fold: { none: noPeople, begins: null, apply: applyPeople },
  },
  owner: {
    bodies: OWNER_BODIES,
    versions: {},
    fold: { none: null, begins: 'owner-known', apply: applyOwner },
  },
  machine: {
    bodies: MACHINE_BODIES,
    versions: {},
    fold: { none: null, begins: 'machine-known', apply: applyMachine },
  },
  part: {
    bodies: PART_BODIES,
    versions: {},
    fold: { none: null, begins: 'part-known', apply: applyPart },
  },
  job: {
    bodies: JOB_BODIES,
    versions: { 'taken-in': 3, 'thing-found': 3, 'secret-wiped': 2 },
    fold: { none: null, begins: 'taken-in', apply: applyJob },
  },
  enquiry: {
    bodies: ENQUIRY_BODIES,
    versions: {},
    fold: { none: null, begins: 'enquired', apply: applyEnquiry },
  },
  paper: { bodies: PAPER_BODIES, versions: {} },
};

/** Every subject whose streams are folded. */
export const FOLDED: readonly Folded[] = keysOf(ENTRY_TABLE).filter(isFolded);

function isFolded(subject: Subject): subject is Folded {
  return ENTRY_TABLE[subject].fold !== undefined;
}

/** How the streams of a subject are folded. */
export const foldOf = <S extends Folded>(subject: S): Fold<S> => {
  const rows: { readonly [Of in Folded]: { readonly fold: Fold<Of> } } = ENTRY_TABLE;
  return rows[subject].fold;
};

/** The kind that begins a stream, and stands in it once; null where any may, as in a stream of papers. */
export function beginningOf(stream: string): string | null {
  const subject = FOLDED.find((one) => one === stream.split(':')[0]);
  return subject ? foldOf(subject).begins : null;
}

/** A kind as a journal needs it: its newest version, and whether a body is of its shape. */
export type KnownKind = { readonly v: number; readonly body: z.ZodType };

const ROWS: {
  readonly [subject: string]:
    | {
        readonly bodies: { readonly [kind: string]: z.ZodType };
        readonly versions: { readonly [kind: string]: number };
        readonly setApartToo?: readonly string[];
      }
    | undefined;
} = ENTRY_TABLE;

/** A kind by the stream it would stand in; null for one that the stream's subject does not have. */
export function knownKind(stream: string, kind: string): KnownKind | null {
  const row = ROWS[stream.split(':')[0] ?? ''];
  const body = row && Object.hasOwn(row.bodies, kind) ? row.bodies[kind] : undefined;
  return row && body ? { v: Math.max(row.versions[kind] ?? 1, sealedSince(kind)), body } : null;
}

/** Is an entry of this kind also written where others of its stream cannot be read? */
export const isSetApartToo = (subject: Subject, kind: string): boolean =>
  ROWS[subject]?.setApartToo?.includes(kind) ?? false;
