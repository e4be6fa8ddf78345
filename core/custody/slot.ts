import { z } from 'zod';
import type { Shaped } from '../shape.ts';
import type { ThingKind } from './part.ts';
import { attributesShape, thingKindShape } from './part.ts';

/** How a slot came to be known. */
export type SlotSource = Slot['source'];

/** A place in a machine (or rig) that holds one part or one assembly. */
export const slotShape = z.strictObject({
  /** Unique in its machine, as printed on the board or as the shop says it: `A2`, `x16`, `M2_1`, `socket`, `supply`. */
  id: z.string(),
  takes: thingKindShape,
  /** DIMM slots: order from the processor, 1 first. Others: order within their kind. */
  order: z.number(),
  /** Memory channel letter when known, for DIMM slots. */
  channel: z.string().exactOptional(),
  source: z.enum(['own-report', 'template', 'by-hand']),
  /** What is known of the slot itself: bus, lanes, length, form factor, connector. */
  attributes: attributesShape.exactOptional(),
});
export type Slot = Shaped<typeof slotShape>;

/** How long a card's slot is, in lanes: as recorded, else as its name has it (`x16`, `PCIEX1_2`); `undefined`: neither says. */
export function slotLength({ id, attributes }: Pick<Slot, 'id' | 'attributes'>): number | undefined {
  const [length, named] = [attributes?.length, /x(16|8|4|1)(?!\d)/i.exec(id)?.[1]];
  if (typeof length === 'number') return length;
  return named === undefined ? undefined : Number(named);
}

/** Kinds that share a place: a disk and a disc writer hang on the same plug, a small card goes into a long slot. */
const SHARES: Readonly<Partial<Record<ThingKind, readonly ThingKind[]>>> = {
  drive: ['drive', 'optical-drive'],
  'optical-drive': ['drive', 'optical-drive'],
  card: ['card', 'add-in'],
  'add-in': ['card', 'add-in'],
};

/** May a part of this kind go into a slot for that kind? Whether it fits is another question. */
export const takesKind = (slotTakes: ThingKind, kind: ThingKind): boolean =>
  (SHARES[slotTakes] ?? [slotTakes]).includes(kind);

/** Which slots a machine has; `gaps` names what could not be learnt. */
export type SlotPlan = { readonly slots: readonly Slot[]; readonly gaps: readonly string[] };
