import type { EpochMs } from '../time.ts';
import type { Part } from './ledger.ts';

/**
 * A part as it counts at a moment: "known good" lapses on its day, and is unproved from then on until it is proved
 * anew. Nothing is written for it: the day stands in the evidence.
 */
export const asItCounts = (part: Part, at: EpochMs): Part =>
  part.standing.is === 'known-good' && part.standing.lapses !== null && part.standing.lapses <= at
    ? { ...part, standing: { is: 'unproved', why: 'lapsed' } }
    : part;
