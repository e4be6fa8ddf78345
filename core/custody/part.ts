import { z } from 'zod';
import { type Brand, brand } from '../brand.ts';
import { ownerIdShape, partIdShape } from '../ids.ts';
import type { Shaped } from '../shape.ts';
import type { EpochMs } from '../time.ts';
import { epochMsShape } from '../time.ts';

/** Seven characters, the last is the ISO/IEC 7064 MOD 37,36 check character. */
export type Tag = Brand<string, 'Tag'>;
const kept = brand<Tag>();
/** As it stands in entries: checked before it was written. */
export const tagShape = z.string().transform(kept);

/** What sits in a desktop PC. */
export const PART_KINDS = [
  'board',
  'processor',
  'cooler',
  'dimm',
  'card',
  'supply',
  'drive',
  'optical-drive',
  'case',
  'fan',
  'add-in',
  'riser',
  'cell',
  'lead',
  'front-panel',
  'card-reader',
] as const;
/** What the shop works with and lends like a part. */
export const EQUIPMENT_KINDS = [
  'meter',
  'plug-meter',
  'load-tester',
  'lens',
  'lamp',
  'stick',
  'screen',
  'cord',
  'picture-cable',
  'speaker',
  'dock',
  'programmer',
  'heat-camera',
  'warm-air',
  'port-set',
  'code-reader',
  'keyboard',
  'rig',
] as const;
export type PartKind = (typeof PART_KINDS)[number];
export type EquipmentKind = (typeof EQUIPMENT_KINDS)[number];
export type ThingKind = PartKind | EquipmentKind;
export const THING_KINDS = [...PART_KINDS, ...EQUIPMENT_KINDS] as const;
export const thingKindShape = z.enum(THING_KINDS);

/** Facts of a part by attribute name (names and meanings: core/fit/attributes). What is not known is absent. */
export const attributesShape = z.record(
  z.string(),
  z.union([z.string(), z.number(), z.boolean(), z.array(z.string())]),
);
export type Attributes = Shaped<typeof attributesShape>;

export const belongsShape = z.discriminatedUnion('to', [
  z.strictObject({ to: z.literal('shop') }),
  z.strictObject({ to: z.literal('owner'), owner: ownerIdShape }),
]);

/** How far a known-good standing reaches. */
export const SCOPES = ['starts', 'under-load', 'both-channels', 'on-this-board-family'] as const;
export type Scope = (typeof SCOPES)[number];

/** Who showed that a part works, where, when and how far. */
export const evidenceShape = z.strictObject({
  at: epochMsShape,
  by: z.string(),
  where: z.string(),
  scopes: z.array(z.enum(SCOPES)),
});
export type ProofEvidence = Shaped<typeof evidenceShape>;

export type ProofStatus =
  | { readonly is: 'trial-grade'; readonly scopes: readonly Scope[] }
  | { readonly is: 'known-good'; readonly evidence: ProofEvidence; readonly lapses: EpochMs | null }
  | { readonly is: 'exposed'; readonly to: readonly string[]; readonly job: string; readonly before: ProofStatus }
  | { readonly is: 'unproved'; readonly why: string }
  | { readonly is: 'suspect' }
  | { readonly is: 'dead'; readonly how: string };
export const proofStatusShape: z.ZodType<ProofStatus> = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('trial-grade'), scopes: z.array(z.enum(SCOPES)) }),
  z.strictObject({ is: z.literal('known-good'), evidence: evidenceShape, lapses: epochMsShape.nullable() }),
  z.strictObject({
    is: z.literal('exposed'),
    to: z.array(z.string()),
    job: z.string(),
    before: z.lazy(() => proofStatusShape),
  }),
  z.strictObject({ is: z.literal('unproved'), why: z.string() }),
  z.strictObject({ is: z.literal('suspect') }),
  z.strictObject({ is: z.literal('dead'), how: z.string() }),
]);

/** A part as the ledger knows it. Parts that never leave their place have no tag; they are known by their slot. */
export const partFactsShape = z.strictObject({
  id: partIdShape,
  tag: tagShape.nullable(),
  kind: thingKindShape,
  /** What a person calls it: maker and model, or "unknown DIMM". */
  name: z.string(),
  belongs: belongsShape,
  attributes: attributesShape,
  standing: proofStatusShape,
  /** It is there, and nobody could read yet what it is; left out once it is known. */
  unread: z.literal(true).exactOptional(),
});
export type PartFacts = Shaped<typeof partFactsShape>;
