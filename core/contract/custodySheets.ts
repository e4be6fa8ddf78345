import type { Tag } from '../custody/part.ts';
import type { Place } from '../custody/place.ts';
import type { SlotThenNow } from '../custody/readouts/inAgainstOut.ts';
import type { PartOut } from '../custody/readouts/partsOut.ts';
import type { JobId } from '../ids.ts';
import type { EpochMs } from '../time.ts';

/** One stay of a part in a place; the last one has no end. */
export type PathStay = {
  readonly place: Place;
  /** What the machine, or the part it moves with, is called. */
  readonly holder: string | null;
  readonly since: EpochMs;
  readonly until: EpochMs | null;
  readonly job: JobId | null;
  /** Whose job it was. */
  readonly called: string | null;
  /** Who put it there, by name. */
  readonly by: string;
};

/** A part of ours that is out, with the names a person says. */
export type OutRow = PartOut & { readonly called: string | null; readonly holder: string | null; readonly by: string };

/** A machine's slots at taking-in and now. */
export type MachineThenNow = {
  readonly called: string;
  readonly tag: Tag | null;
  readonly slots: readonly SlotThenNow[];
};
