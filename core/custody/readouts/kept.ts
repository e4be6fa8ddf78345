import type { JobId, PartId } from '../../ids.ts';
import type { EpochMs } from '../../time.ts';
import type { Part } from '../ledger.ts';
import type { Tag } from '../part.ts';

/** What may be done with a kept part now. */
export type KeptMay = 'give-back' | 'recycle' | 'destroy-by-own-word';

/** A dead part that the owner let the shop keep, until when, and what may be done with it now. */
export type KeptPart = {
  readonly part: PartId;
  readonly tag: Tag | null;
  readonly name: string;
  readonly job: JobId;
  readonly shelf: string;
  readonly until: EpochMs;
  readonly due: boolean;
  readonly may: readonly KeptMay[];
};

/** The kept part as it counts at `at`; null for a part that is not kept. After its day it may be recycled, as agreed. */
export function keptNow(part: Part, job: JobId, at: EpochMs): KeptPart | null {
  if (part.place.at !== 'kept') return null;
  const { shelf, until } = part.place;
  const due = until <= at;
  const may: readonly KeptMay[] = part.dataBearing
    ? ['give-back', 'destroy-by-own-word']
    : due
      ? ['recycle', 'give-back']
      : ['give-back'];
  return { part: part.id, tag: part.tag, name: part.name, job, shelf, until, due, may };
}
