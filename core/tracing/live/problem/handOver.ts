import { hasWord } from '../gates/ownersWords.ts';
import type { Fault, FaultModel, TracingCase } from '../types.ts';
import { mendingMinutes } from './values.ts';

/** Handing over is charged at least this many minutes, so that a limit nearly spent does not end a job too soon. Common practice, no source. */
const LEAST_HAND_OVER = 30;
/** Charged when no limit was said, in minutes: half a day at the bench. Common practice, no source. */
const HAND_OVER = 240;

/** What handing over counts: the least of what the owner's limit and the machine's worth leave, in bench minutes. */
export type HandOver = {
  readonly minutes: number;
  /** Which of the two is the least; `usual` where neither was said. */
  readonly by: 'limit' | 'worth' | 'usual';
  /** Minutes that the worth leaves above that; endless where it is not known. */
  readonly spare: number;
  /** Minutes that are truly left of what ends it, as they are told: what is charged is never less than a little while. */
  readonly left: number;
};

/**
 * What is left to find the fault with: of the limit, which is asked for anew before a part is bought; and of what the
 * machine is worth to its owner, which mending comes out of too. What is spent, the finding fee in it, is gone from both.
 * Who was asked and allowed more has no limit that ends it, but what is usual.
 */
export function handOverOf(model: FaultModel, tracing: TracingCase): HandOver {
  const { limitMinor: agreed, worthMinor, spentMinor, perMinuteMinor } = tracing.money;
  const limitMinor = hasWord(model, tracing, 'limit') ? null : agreed;
  const left = (minor: number) => (minor - spentMinor) / Math.max(1, perMinuteMinor);
  const limit = limitMinor === null ? HAND_OVER : Math.max(LEAST_HAND_OVER, left(limitMinor));
  const worth = worthMinor === null ? Number.POSITIVE_INFINITY : Math.max(0, left(worthMinor));
  const minutes = Math.min(limit, worth);
  const by = worth <= limit ? 'worth' : limitMinor === null ? 'usual' : 'limit';
  const told = by === 'limit' && limitMinor !== null ? Math.max(0, left(limitMinor)) : minutes;
  return { minutes, by, spare: worth - minutes, left: told };
}

/**
 * Minutes that mending what was found takes out of the machine's worth, no more than handing over would: what costs
 * more than that to mend goes home as it came, found or not.
 */
export const mendingCharged = (model: FaultModel, { minutes, spare }: HandOver, faults: readonly Fault[]): number =>
  Math.min(minutes, Math.max(0, faults.reduce((sum, fault) => sum + mendingMinutes(model, fault), 0) - spare));

/** As if neither limit nor worth ended it: what finding and mending would take then. Giving up counts as it usually does. */
export const regardless = ({ minutes, by, left }: HandOver): HandOver => ({
  minutes: Math.max(minutes, HAND_OVER),
  by,
  left,
  spare: by === 'worth' ? 0 : Number.POSITIVE_INFINITY,
});
