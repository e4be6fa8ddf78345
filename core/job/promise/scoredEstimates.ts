import type { Scored } from '../../labour/calibration/calibration.ts';
import type { ClosedFacts } from '../bench/closedFacts.ts';
import { type EstimateMoment, firstOfMoments } from '../estimate.ts';
import { isCharged } from '../work.ts';

/** The first estimate of each moment, by the look ahead that replaced its first figure where one did, on a closed job, with the hands-on minutes that it took in the end. */
export type JobScores = readonly (Scored & { readonly moment: EstimateMoment })[];

/** Why a closed job scores no estimate: it went home unmended, nothing was worked on it, a clock was forgotten, none was kept. */
export type NotScored = 'asItCame' | 'nothingDone' | 'forgotten' | 'noEstimate';

/**
 * What a closed job says of its estimates. A job that went home as it came was not done to its end, so what the whole
 * would have taken nobody knows: it is counted apart. Minutes beyond the owner's word count, charged or not.
 */
export function scoredEstimates(job: Pick<ClosedFacts, 'work' | 'handover' | 'estimates'>): JobScores | NotScored {
  const took = job.work.filter(isCharged).reduce((sum, work) => sum + work.handsOn, 0);
  if (job.handover?.asItCame) return 'asItCame';
  if (took === 0) return 'nothingDone';
  if (job.work.some((work) => work.forgotten && isCharged(work))) return 'forgotten';
  if (job.estimates.length === 0) return 'noEstimate';
  return firstOfMoments(job.estimates).map(({ moment, handsOn: { p10, p50, p90 } }) => ({
    moment,
    p10,
    p50,
    p90,
    took,
  }));
}
