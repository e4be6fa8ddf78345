import { z } from 'zod';
import { type JobId, jobIdShape, ownerIdShape, type PartId, partIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { personalShape } from '../journal/personal.ts';
import type { Written } from '../journal/written.ts';
import type { BodiesOf, Shaped } from '../shape.ts';
import { type EpochMs, epochMsShape } from '../time.ts';
import { attributesShape, type PartFacts, partFactsShape, proofStatusShape, tagShape } from './part.ts';
import { type Place, placeShape } from './place.ts';

/** Under what title a shop part may be inside an owner's machine. */
const titleShape = z
  .discriminatedUnion('as', [
    z.strictObject({ as: z.literal('on-trial'), job: jobIdShape }),
    z.strictObject({ as: z.literal('lent'), job: jobIdShape, returnBy: epochMsShape }),
  ])
  .nullable();
export type Title = Shaped<typeof titleShape>;

/** Why a part moved: made from the step, the fitting list or a correction, never typed twice. */
const moveReasonShape = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('step'), step: z.string(), run: z.string() }),
  /** `says`: why it goes into another slot than the one recorded. */
  z.strictObject({ by: z.enum(['fitting', 'hand']), says: z.string().exactOptional() }),
  z.strictObject({ by: z.enum(['wrong-slot-put-right', 'board-has-only-these', 'closing-up']) }),
  z.strictObject({ by: z.literal('proof'), run: z.string() }),
  z.strictObject({ by: z.literal('back-to-worked'), run: z.string() }),
  z.strictObject({ by: z.literal('owner-word'), answer: z.string() }),
  z.strictObject({ by: z.literal('sale'), priceMinor: z.number() }),
  z.strictObject({ by: z.literal('order'), order: z.string() }),
  z.strictObject({ by: z.literal('righting'), says: z.string() }),
]);
export type MoveReason = Shaped<typeof moveReasonShape>;

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
  /** The job it came out of a machine for, the last time it did; null for none. Left out: it never came out of one. */
  readonly cameOutFor?: JobId | null;
  readonly dataBearing: boolean;
};

export const PART_BODIES = {
  'part-known': partFactsShape.extend({
    place: placeShape,
    serial: personalShape(z.string()).nullable(),
    source: z.enum(['own-report', 'census', 'bought', 'by-hand']),
    dataBearing: z.boolean(),
    at: epochMsShape,
    by: z.string(),
  }),
  'part-tagged': z.strictObject({ tag: tagShape.nullable() }),
  'part-moved': z.strictObject({
    from: placeShape,
    to: placeShape,
    job: jobIdShape.nullable(),
    why: moveReasonShape,
    title: titleShape,
    at: epochMsShape,
    by: z.string(),
  }),
  'part-standing': z.strictObject({ standing: proofStatusShape, why: z.string() }),
  'part-corrected': z.strictObject({
    name: z.string().exactOptional(),
    attributes: attributesShape.exactOptional(),
    /** Whether it is still not known what it is; left out where nothing is said of that. */
    unread: z.boolean().exactOptional(),
    /** Facts that turned out not to be known. */
    unknown: z.array(z.string()).exactOptional(),
  }),
  'part-lent': z.strictObject({ job: jobIdShape, returnBy: epochMsShape }),
  'rider-joined': z.strictObject({ part: partIdShape }),
  'rider-left': z.strictObject({ part: partIdShape }),
  'part-reserved': z.strictObject({ job: jobIdShape }),
  'part-released': z.strictObject({ job: jobIdShape }),
  'title-passed': z.strictObject({ to: ownerIdShape, job: jobIdShape, question: z.string(), priceMinor: z.number() }),
} as const;
export type PartBodies = BodiesOf<typeof PART_BODIES>;

export type PartEntry = EntryOf<`part:${string}`, PartBodies>;

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
        ...(entry.body.from.at === 'slot' && entry.body.to.at !== 'slot' && { cameOutFor: entry.body.job }),
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
    case 'title-passed':
      return {
        ...part,
        belongs: { to: 'owner', owner: entry.body.to },
        title: null,
        reservedFor: null,
        reserved: null,
      };
  }
}
