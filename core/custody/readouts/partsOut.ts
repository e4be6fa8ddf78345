import type { JobId, PartId } from '../../ids.ts';
import type { EpochMs } from '../../time.ts';
import type { Part } from '../ledger.ts';
import type { Tag } from '../part.ts';
import type { Place } from '../place.ts';

/** A part of ours that is not where it hangs: with whom, since when, until when. */
export type PartOut = {
  readonly part: PartId;
  readonly tag: Tag | null;
  readonly name: string;
  readonly as: 'on-trial' | 'lent' | 'away' | 'about';
  readonly job: JobId | null;
  readonly is: Place;
  readonly since: EpochMs;
  readonly movedBy: string;
  readonly returnBy: EpochMs | null;
  readonly overdue: boolean;
};

/** The shop's parts that are out: past their day first, then the longest out. What moves with another is not told twice. */
export function partsOut(parts: readonly Part[], at: EpochMs): readonly PartOut[] {
  return parts
    .filter((part) => part.belongs.to === 'shop' && !IN.includes(part.place.at))
    .map((part): PartOut => {
      const { id, tag, name, title, place, since, movedBy } = part;
      const returnBy = title?.as === 'lent' ? title.returnBy : null;
      return {
        part: id,
        tag,
        name,
        as: title?.as ?? (place.at === 'transit' || place.at === 'away' ? 'away' : 'about'),
        job: title?.job ?? ('job' in place ? place.job : null),
        is: place,
        since,
        movedBy,
        returnBy,
        overdue: returnBy !== null && returnBy < at,
      };
    })
    .sort((a, b) => Number(b.overdue) - Number(a.overdue) || a.since - b.since);
}

/** Where a part of ours is at home, gone for good, or told of with the one it moves with. */
const IN: readonly Place['at'][] = ['bin', 'rig', 'gone', 'with'];
