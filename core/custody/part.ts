import type { Brand } from '../brand.ts';
import type { OwnerId, PartId } from '../ids.ts';
import type { EpochMs } from '../time.ts';

/** Seven characters, the last is the ISO/IEC 7064 MOD 37,36 check character. */
export type Tag = Brand<string, 'Tag'>;

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

/** Facts of a part by attribute name (names and meanings: core/fit/attributes). What is not known is absent. */
export type Attributes = { readonly [name: string]: string | number | boolean | readonly string[] };

export type Belongs = { readonly to: 'shop' } | { readonly to: 'owner'; readonly owner: OwnerId };

/** How far a known-good standing reaches. */
export const SCOPES = ['starts', 'under-load', 'both-channels', 'on-this-board-family'] as const;
export type Scope = (typeof SCOPES)[number];

/** Who showed that a part works, where, when and how far. */
export type Evidence = {
  readonly at: EpochMs;
  readonly by: string;
  readonly where: string;
  readonly scopes: readonly Scope[];
};

export type ProofStatus =
  | { readonly is: 'trial-grade'; readonly scopes: readonly Scope[] }
  | { readonly is: 'known-good'; readonly evidence: Evidence; readonly lapses: EpochMs | null }
  | { readonly is: 'exposed'; readonly to: readonly string[]; readonly job: string; readonly before: ProofStatus }
  | { readonly is: 'unproved'; readonly why: string }
  | { readonly is: 'suspect' }
  | { readonly is: 'dead'; readonly how: string };

/** A part as the ledger knows it. Parts that never leave their place have no tag; they are known by their slot. */
export type PartFacts = {
  readonly id: PartId;
  readonly tag: Tag | null;
  readonly kind: ThingKind;
  /** What a person calls it: maker and model, or "unknown DIMM". */
  readonly name: string;
  readonly belongs: Belongs;
  readonly attributes: Attributes;
  readonly standing: ProofStatus;
  /** It is there, and nobody could read yet what it is; left out once it is known. */
  readonly unread?: true;
};
