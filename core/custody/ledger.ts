import type { JobId, OwnerId, PartId } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';
import type { EpochMs } from '../time.ts';
import type { PartFacts, ProofStatus, Tag } from './part.ts';
import type { Place } from './place.ts';

/** Under what title a shop part may be inside an owner's machine. */
export type Title =
  | { readonly as: 'on-trial'; readonly job: JobId }
  | { readonly as: 'lent'; readonly job: JobId; readonly returnBy: EpochMs }
  | null;

/** Why a part moved: made from the step, the fitting list or a correction, never typed twice. */
export type MoveReason =
  | { readonly by: 'step'; readonly step: string; readonly run: string }
  /** `says`: why it goes into another slot than the one recorded. */
  | { readonly by: 'fitting' | 'hand'; readonly says?: string }
  | { readonly by: 'wrong-slot-put-right' }
  | { readonly by: 'board-has-only-these' }
  | { readonly by: 'closing-up' }
  | { readonly by: 'proof'; readonly run: string }
  | { readonly by: 'back-to-worked'; readonly run: string }
  | { readonly by: 'owner-word'; readonly answer: string }
  | { readonly by: 'sale'; readonly priceMinor: number }
  | { readonly by: 'order'; readonly order: string }
  | { readonly by: 'righting'; readonly says: string };

/** A part as the ledger knows it now. */
export type Part = PartFacts & {
  readonly place: Place;
  /** The bin it lies in when nobody has it; null for parts that have none. */
  readonly home: Place | null;
  readonly title: Title;
  readonly reservedFor: JobId | null;
  /** Since when it is held, and by whom; null when nobody holds it. */
  readonly reserved: { readonly at: EpochMs; readonly by: string } | null;
  /** What moves with it as one, until it is split. */
  readonly riders: readonly PartId[];
  /** The part it first moved with: a lead belongs to its own supply for ever. */
  readonly companion: PartId | null;
  /** Who moved it last, and when: shown to the second of two who want it. */
  readonly since: EpochMs;
  readonly movedBy: string;
  readonly dataBearing: boolean;
};

export type PartBodies = {
  readonly 'part-known': PartFacts & {
    readonly place: Place;
    readonly serial: Personal<string> | null;
    readonly source: 'own-report' | 'census' | 'bought' | 'by-hand';
    readonly dataBearing: boolean;
    readonly at: EpochMs;
    readonly by: string;
  };
  readonly 'part-tagged': { readonly tag: Tag | null };
  readonly 'part-moved': {
    readonly from: Place;
    readonly to: Place;
    readonly job: JobId | null;
    readonly why: MoveReason;
    readonly title: Title;
    readonly at: EpochMs;
    readonly by: string;
  };
  readonly 'part-standing': { readonly standing: ProofStatus; readonly why: string };
  readonly 'part-corrected': {
    readonly name?: string;
    readonly attributes?: PartFacts['attributes'];
    /** Whether it is still not known what it is; left out where nothing is said of that. */
    readonly unread?: boolean;
    /** Facts that turned out not to be known. */
    readonly unknown?: readonly string[];
  };
  readonly 'part-lent': { readonly job: JobId; readonly returnBy: EpochMs };
  readonly 'rider-joined': { readonly part: PartId };
  readonly 'rider-left': { readonly part: PartId };
  readonly 'part-reserved': { readonly job: JobId };
  readonly 'part-released': { readonly job: JobId };
  readonly 'part-sold': {
    readonly to: OwnerId;
    readonly job: JobId;
    readonly question: string;
    readonly priceMinor: number;
  };
};

export type PartEntry = EntryOf<`part:${string}`, PartBodies>;

/** When an entry was written and by whom: known of every entry but those just being decided. */
type Written = { readonly at: EpochMs; readonly by: string };

const companionOf = (place: Place): PartId | null => (place.at === 'with' ? place.part : null);

const without = (attributes: PartFacts['attributes'], unknown: readonly string[]): PartFacts['attributes'] =>
  Object.fromEntries(Object.entries(attributes).filter(([name]) => !unknown.includes(name)));

/** The part after one more entry of its stream; null before the first. */
export function applyPart(part: Part | null, entry: PartEntry & Written): Part | null {
  if (entry.kind === 'part-known') {
    const { id, tag, kind, name, belongs, attributes, standing, place, dataBearing, unread, at, by } = entry.body;
    return {
      id,
      tag,
      kind,
      name,
      belongs,
      attributes,
      standing,
      place,
      home: place.at === 'bin' ? place : null,
      dataBearing,
      ...(unread && { unread }),
      title: null,
      reservedFor: null,
      reserved: null,
      riders: [],
      companion: companionOf(place),
      since: at,
      movedBy: by,
    };
  }
  if (!part) return null;
  switch (entry.kind) {
    case 'part-tagged':
      return { ...part, tag: entry.body.tag };
    case 'part-moved':
      return {
        ...part,
        place: entry.body.to,
        home: entry.body.to.at === 'bin' ? entry.body.to : part.home,
        title: entry.body.title,
        companion: part.companion ?? companionOf(entry.body.to),
        since: entry.body.at,
        movedBy: entry.body.by,
      };
    case 'part-standing':
      return { ...part, standing: entry.body.standing };
    case 'part-corrected': {
      const { unread: was, ...known } = part;
      return {
        ...known,
        ...((entry.body.unread ?? was) && { unread: true }),
        name: entry.body.name ?? part.name,
        attributes: without({ ...part.attributes, ...entry.body.attributes }, entry.body.unknown ?? []),
      };
    }
    case 'part-reserved':
      return { ...part, reservedFor: entry.body.job, reserved: { at: entry.at, by: entry.by } };
    case 'part-released':
      return part.reservedFor === entry.body.job ? { ...part, reservedFor: null, reserved: null } : part;
    case 'part-lent':
      return { ...part, title: { as: 'lent', ...entry.body } };
    case 'rider-joined':
      return { ...part, riders: [...part.riders.filter((id) => id !== entry.body.part), entry.body.part] };
    case 'rider-left':
      return { ...part, riders: part.riders.filter((id) => id !== entry.body.part) };
    case 'part-sold':
      return {
        ...part,
        belongs: { to: 'owner', owner: entry.body.to },
        title: null,
        reservedFor: null,
        reserved: null,
      };
  }
}
