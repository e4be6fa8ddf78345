import { z } from 'zod';
import { type OwnerId, ownerIdShape } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import { PURPOSES, personalShape } from '../journal/personal.ts';
import { type BodiesOf, type Shaped, someOf } from '../shape.ts';
import { epochMsShape } from '../time.ts';

const reachShape = z.strictObject({
  phone: z.string().nullable(),
  mail: z.string().nullable(),
  first: z.enum(['phone', 'mail']),
});

const approverShape = z.strictObject({ name: z.string(), upToMinor: z.number().nullable() });
export type Approver = Shaped<typeof approverShape>;

/** Who brings a machine, and who may speak, agree and collect for them. */
const ownerKindShape = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('person') }),
  z.strictObject({ is: z.literal('minor'), guardian: personalShape(z.string()) }),
  z.strictObject({
    is: z.literal('company'),
    orderNumber: z.string().nullable(),
    approves: personalShape(z.string()).nullable(),
    approvesUpToMinor: z.number().nullable(),
    /** Further people who approve, each up to their own amount; null has no limit. */
    alsoApprove: personalShape(z.array(approverShape)).optional(),
  }),
  z.strictObject({ is: z.literal('for-someone-else'), machineOf: personalShape(z.string()) }),
]);
export type OwnerKind = Shaped<typeof ownerKindShape>;

const ownerBodyShape = z.strictObject({
  name: personalShape(z.string()),
  reach: personalShape(reachShape),
  address: personalShape(z.string()).nullable(),
  language: z.string(),
  kind: ownerKindShape,
  mayCollect: personalShape(z.array(z.string())),
});
export type OwnerBody = Shaped<typeof ownerBodyShape>;

export type Owner = OwnerBody & {
  readonly id: OwnerId;
  /** The last erasure; absent while nothing was erased. */
  readonly erased?: OwnerErased;
};

const purposeShape = z.enum(PURPOSES);
/** What was destroyed of what was held of an owner, and what stays: why, and until when. */
const ownerErasedShape = z.strictObject({
  /** The owner asked for it; else its time was over. */
  asked: z.boolean(),
  erased: z.array(purposeShape),
  kept: z.array(z.strictObject({ purpose: purposeShape, why: z.enum(['bills']), until: epochMsShape })),
});
export type OwnerErased = Shaped<typeof ownerErasedShape>;

export const OWNER_BODIES = {
  'owner-known': ownerBodyShape.extend({ id: ownerIdShape }),
  'owner-changed': someOf(ownerBodyShape),
  'owner-erased': ownerErasedShape,
} as const;
export type OwnerBodies = BodiesOf<typeof OWNER_BODIES>;

export type OwnerEntry = EntryOf<`owner:${string}`, OwnerBodies>;

/** An owner of whom nothing can be read, for showing what is theirs: as after everything about them was erased. */
export function unknownOwner(id: OwnerId): Owner {
  const gone = { personal: 'contact', of: id, value: null } as const;
  return { id, name: gone, reach: gone, address: null, language: 'en', kind: { is: 'person' }, mayCollect: gone };
}

/** The owner after one more entry of their stream; null before the first. */
export function applyOwner(owner: Owner | null, entry: OwnerEntry): Owner | null {
  if (entry.kind === 'owner-known') return entry.body;
  if (entry.kind === 'owner-erased') return owner && { ...owner, erased: entry.body };
  return owner && { ...owner, ...entry.body };
}
