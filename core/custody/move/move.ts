import type { JobId, MachineId, OwnerId, PartId } from '../../ids.ts';
import type { EpochMs } from '../../time.ts';
import type { MoveReason, Part } from '../ledger.ts';
import type { Machine } from '../machine.ts';
import type { OwnersWord } from '../ownersWord.ts';
import type { Place } from '../place.ts';

/** One move of one part, as asked. */
export type Move = {
  readonly part: PartId;
  readonly from: Place;
  readonly to: Place;
  readonly job: JobId | null;
  readonly why: MoveReason;
  /** The day a lent part comes back; only for a move that lends. */
  readonly returnBy?: EpochMs;
};

/** What the decision looks at: the part, the machines whose slots it leaves or fills, the word on trial parts. */
export type MoveView = {
  readonly part: Part | null;
  readonly machine: (id: MachineId | string) => Machine | null;
  /** Another part: what it is to move with, or what sits in the slot. */
  readonly other: (id: PartId) => Part | null;
  /** May shop parts go into this job's machine for trial? */
  readonly trialAllowed: boolean;
  /** Whose machine this job is about; null where there is no job. */
  readonly owner: OwnerId | null;
  /** Has the owner's answer to an offer sold or given this part? */
  readonly agreedFor: boolean;
  /** The owner's word for this part; null where there is no job that could hold one. */
  readonly word: OwnersWord | null;
};
