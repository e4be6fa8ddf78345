import { z } from 'zod';
import { jobIdShape, machineIdShape, partIdShape } from '../ids.ts';
import type { Shaped } from '../shape.ts';
import { epochMsShape } from '../time.ts';

/** Whom a part is away with. */
export const AWAY_WITH = ['supplier', 'maker', 'laboratory'] as const;
/** Why a part is gone for good. */
export const GONE_WHY = ['recycled', 'sold', 'given', 'destroyed', 'returned'] as const;

/** Where a part is. A part is in exactly one place at any time; a slot, and only a slot, holds at most one. */
export const placeShape = z.discriminatedUnion('at', [
  z.strictObject({ at: z.literal('slot'), machine: machineIdShape, slot: z.string() }),
  z.strictObject({ at: z.literal('rig'), rig: z.string(), slot: z.string() }),
  /** Moves with another part as one: a lead with its supply, a processor stuck to its cooler. */
  z.strictObject({ at: z.literal('with'), part: partIdShape }),
  z.strictObject({ at: z.literal('bench'), bench: z.string(), job: jobIdShape.nullable() }),
  z.strictObject({ at: z.literal('tray'), tray: z.string(), job: jobIdShape }),
  z.strictObject({ at: z.literal('bin'), bin: z.string() }),
  z.strictObject({ at: z.literal('kept'), shelf: z.string(), until: epochMsShape }),
  z.strictObject({ at: z.literal('with-owner') }),
  z.strictObject({
    at: z.literal('transit'),
    carrier: z.string(),
    number: z.string(),
    insured: z.boolean(),
    to: z.string(),
  }),
  z.strictObject({ at: z.literal('away'), kind: z.enum(AWAY_WITH), name: z.string() }),
  z.strictObject({ at: z.literal('not-found'), since: epochMsShape, lastSeen: z.string() }),
  z.strictObject({
    at: z.literal('gone'),
    why: z.enum(GONE_WHY),
    /** Number of the certificate of destruction; a part that holds data is not gone without. */
    certificate: z.string().exactOptional(),
  }),
]);
export type Place = Shaped<typeof placeShape>;

/** The machine or rig stream a place belongs to, with its slot; null for places that are no slot. */
export function slotOf(place: Place): { readonly machine: string; readonly slot: string } | null {
  if (place.at === 'slot') return { machine: place.machine, slot: place.slot };
  if (place.at === 'rig') return { machine: place.rig, slot: place.slot };
  return null;
}

/** Are two places the same? Compares only what says where, not since when. */
export const samePlace = (a: Place, b: Place): boolean => keyOf(a) === keyOf(b);

function keyOf(place: Place): string {
  switch (place.at) {
    case 'slot':
      return `slot/${place.machine}/${place.slot}`;
    case 'rig':
      return `rig/${place.rig}/${place.slot}`;
    case 'with':
      return `with/${place.part}`;
    case 'bench':
      return `bench/${place.bench}`;
    case 'tray':
      return `tray/${place.job}/${place.tray}`;
    case 'bin':
      return `bin/${place.bin}`;
    case 'kept':
      return `kept/${place.shelf}`;
    case 'away':
      return `away/${place.kind}/${place.name}`;
    case 'transit':
      return `transit/${place.carrier}/${place.number}`;
    case 'with-owner':
    case 'not-found':
    case 'gone':
      return place.at;
  }
}
