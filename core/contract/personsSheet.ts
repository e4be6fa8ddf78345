import type { OwnerErased } from '../approval/owner.ts';
import type { JobId, OwnerId } from '../ids.ts';
import type { Purpose } from '../journal/personal.ts';
import type { EpochMs } from '../time.ts';

/** An owner as the shop holds them: what would go now, what stays and until when, and what is in the way. */
export type PersonSheet = {
  readonly owner: OwnerId;
  /** Null: erased. */
  readonly name: string | null;
  readonly jobs: number;
  /** Open jobs: nothing is erased meanwhile. */
  readonly open: readonly JobId[];
  /** Held now, and gone with an erasure. */
  readonly goes: readonly Purpose[];
  readonly stays: OwnerErased['kept'];
  /** When the agreed time for the last job is over; null while one is open. */
  readonly over: EpochMs | null;
};

/** Owners whose time is over, or will be within the days given: the list before anything goes by itself. */
export type PersonsDue = { readonly days: number; readonly due: readonly PersonSheet[] };
