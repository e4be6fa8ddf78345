import { hasNoLead } from '../../../core/custody/m2.ts';
import type { Tag, ThingKind } from '../../../core/custody/part.ts';
import type { Slot } from '../../../core/custody/slot.ts';

/** A part as the drawing needs it. Words come ready in the reader's language. */
export type InsidePart = {
  readonly id: string;
  readonly kind: ThingKind;
  /** "DIMM, DDR4 8 GB", "Supply, 550 W". */
  readonly what: string;
  /** Short enough to stand inside a small outline: "2 TB". */
  readonly short?: string;
  readonly whose: 'owner' | 'shop';
  readonly tag: Tag | null;
  readonly standing: 'plain' | 'suspect' | 'named' | 'dead';
  /** False: it is there, and nobody has looked what it is. */
  readonly known: boolean;
  /** Where it is, when that is more than "in its place": "under its cooler"; for a part that is out: "tray 3". */
  readonly where?: string;
  /** What is known of it: "rails in limits 15:08", "on trial since 10:31". */
  readonly note?: string;
  /** A drive without its leads: drawn with a lead that ends in the open. */
  readonly unplugged?: boolean;
};

export type InsideSlot = {
  readonly slot: Slot;
  readonly holds: InsidePart | null;
  /** The part whose recorded place this is and that is out now: its shadow stays here. */
  readonly away: InsidePart | null;
  /** False: nobody has looked yet whether something is in it. */
  readonly seen: boolean;
};

/** A tray, the bench, a rig: where parts lie that are not in the machine. */
export type InsidePlace = { readonly id: string; readonly name: string; readonly holds: readonly InsidePart[] };

/** Where a part is let go. */
export type Drop = { readonly to: 'slot'; readonly slot: string } | { readonly to: 'place'; readonly place: string };

/** Slots the drawing invents where nothing is known, so that a machine with no slot plan can still be drawn and pointed at. */
export const GUESSED = '?';

const MUST = [
  ['board', 'board'],
  ['socket', 'processor'],
  ['memory', 'dimm'],
  ['card', 'card'],
  ['supply', 'supply'],
  ['drive', 'drive'],
] as const satisfies readonly (readonly [string, ThingKind])[];

/** The slots given, and an unseen one for each kind of place every desktop PC has and this plan does not know. */
export function withUnseen(slots: readonly InsideSlot[]): readonly InsideSlot[] {
  const missing = MUST.filter(([, takes]) => !slots.some((one) => one.slot.takes === takes));
  return [
    ...slots,
    ...missing.map(
      ([name, takes]): InsideSlot => ({
        slot: { id: `${GUESSED}${name}`, takes, order: 1, source: 'by-hand' },
        holds: null,
        away: null,
        seen: false,
      }),
    ),
  ];
}

export type SlotLook =
  | 'board'
  | 'socket'
  | 'cooler'
  | 'dimm'
  | 'card'
  | 'm2'
  | 'bay'
  | 'optical'
  | 'supply'
  | 'fan'
  | 'front'
  | 'cell'
  | 'none';

/** Where in the drawing a slot belongs. */
export function slotLook(slot: Slot): SlotLook {
  switch (slot.takes) {
    case 'board':
      return 'board';
    case 'processor':
      return 'socket';
    case 'cooler':
      return 'cooler';
    case 'dimm':
      return 'dimm';
    case 'card':
    case 'add-in':
    case 'riser':
      return 'card';
    case 'drive':
      return hasNoLead(slot) ? 'm2' : 'bay';
    case 'card-reader':
      return 'bay';
    case 'optical-drive':
      return 'optical';
    case 'supply':
      return 'supply';
    case 'fan':
      return 'fan';
    case 'front-panel':
      return 'front';
    case 'cell':
      return 'cell';
    default:
      return 'none';
  }
}
