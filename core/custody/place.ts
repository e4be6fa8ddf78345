import type { JobId, MachineId } from '../ids.ts';
import type { EpochMs } from '../time.ts';

/** Where a part is. A part is in exactly one place at any time; a slot, and only a slot, holds at most one. */
export type Place =
  | { readonly at: 'slot'; readonly machine: MachineId; readonly slot: string }
  | { readonly at: 'rig'; readonly rig: string; readonly slot: string }
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
  | { readonly at: 'gone'; readonly why: 'recycled' | 'sold' | 'given' | 'destroyed' };
