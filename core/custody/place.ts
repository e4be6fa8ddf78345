import type { JobId, MachineId, PartId } from '../ids.ts';
import type { EpochMs } from '../time.ts';

/** Where a part is. A part is in exactly one place at any time; a slot, and only a slot, holds at most one. */
export type Place =
  | { readonly at: 'slot'; readonly machine: MachineId; readonly slot: string }
  | { readonly at: 'rig'; readonly rig: string; readonly slot: string }
  /** Moves with another part as one: a lead with its supply, a processor stuck to its cooler. */
  | { readonly at: 'with'; readonly part: PartId }
  | { readonly at: 'bench'; readonly bench: string; readonly job: JobId | null }
  | { readonly at: 'tray'; readonly tray: string; readonly job: JobId }
  | { readonly at: 'bin'; readonly bin: string }
  | { readonly at: 'kept'; readonly shelf: string; readonly until: EpochMs }
  | { readonly at: 'with-owner' }
  | {
      readonly at: 'transit';
      readonly carrier: string;
      readonly number: string;
      readonly insured: boolean;
      readonly to: string;
    }
  | { readonly at: 'away'; readonly kind: 'supplier' | 'maker' | 'laboratory'; readonly name: string }
  | { readonly at: 'not-found'; readonly since: EpochMs; readonly lastSeen: string }
  | {
      readonly at: 'gone';
      readonly why: 'recycled' | 'sold' | 'given' | 'destroyed' | 'returned';
      /** Number of the certificate of destruction; a part that holds data is not gone without. */
      readonly certificate?: string;
    };

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
