import type { Estimate } from '../../job/estimate.ts';
import type { Money } from '../../money/money.ts';
import type { EstimateFacts } from '../../papers/facts.ts';
import { minutes } from '../../time.ts';
import { amount } from '../common.ts';
import type { Making } from '../making.ts';
import { newestQuestion } from '../worded.ts';

/** An estimate in whole minutes and minor units, work only. */
export const estimateFacts = (making: Making, { handsOn, price, passesLimit }: Estimate): EstimateFacts => ({
  minutes: {
    p10: minutes(Math.round(handsOn.p10)),
    p50: minutes(Math.round(handsOn.p50)),
    p90: minutes(Math.round(handsOn.p90)),
  },
  price: {
    p10: amount(making, handsOn.p10 * making.job.perMinuteMinor),
    p50: amount(making, price.p50),
    p90: amount(making, price.p90),
  },
  passesLimit,
});

/** The newest estimate by what was told; null where there is none. */
export const toldEstimate = ({ job }: Making) => job.estimates.findLast((one) => one.moment === 'told') ?? null;

/** The newest estimate by what was seen; null where there is none. */
export const seenEstimate = ({ job }: Making) => job.estimates.findLast((one) => one.moment === 'seen') ?? null;

/** What the part on offer comes to with all the work: the newest estimate of the work, and what the offer names. */
export function offerTotals(making: Making): { readonly p50: Money; readonly p90: Money } | null {
  const question = newestQuestion(making, (one) => one.offer !== null);
  if (!question?.offer) return null;
  const { came, estimates } = making.job;
  const put = came.put[question.id] ?? 0;
  const work = estimates.findLast((_, index) => (came.estimates[index] ?? 0) < put);
  if (!work) return null;
  const things = question.offer.priceMinor + question.offer.extras.reduce((sum, one) => sum + one.priceMinor, 0);
  return { p50: amount(making, work.price.p50 + things), p90: amount(making, work.price.p90 + things) };
}

/** What the owner was told in figures last, on whichever paper: half of the cases, nine in ten of them. */
export function lastTold(making: Making): { readonly from: Money; readonly to: Money } | null {
  const offered = offerTotals(making);
  if (offered) return { from: offered.p50, to: offered.p90 };
  const asked = newestQuestion(making, (one) => one.kind === 'changed-finding');
  const estimate = (asked && seenEstimate(making)) ?? toldEstimate(making);
  return estimate && { from: amount(making, estimate.price.p50), to: amount(making, estimate.price.p90) };
}
