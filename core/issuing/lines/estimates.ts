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
    p10: amount(making, Math.round(handsOn.p10) * making.job.perMinuteMinor),
    p50: amount(making, workMinor(making, handsOn.p50, price.p50)),
    p90: amount(making, workMinor(making, handsOn.p90, price.p90)),
  },
  passesLimit,
});

/**
 * What so much work comes to, in minor units: of the whole minutes that stand beside it, so that whoever multiplies them
 * by the rate finds it. A price that is no price of minutes (agreed work, things in it) stays as it was estimated.
 */
function workMinor({ job: { perMinuteMinor } }: Making, handsOn: number, minor: number): number {
  // Minutes are kept to a tenth and prices to the minor unit: what lies within a fifth of a minute is the same figure.
  const byMinutes = Math.abs(minor - handsOn * perMinuteMinor) <= Math.max(1, perMinuteMinor / 5);
  return byMinutes ? Math.round(handsOn) * perMinuteMinor : minor;
}

/** A simulated sum in whole units of the currency: said as `about`, its pence would claim what nobody knows. */
export function aboutAmount(making: Making, minor: number): Money {
  const { settings, setting } = making;
  const unit = 10 ** setting.minorDigits(settings.currency);
  return amount(making, Math.round(minor / unit) * unit);
}

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
  const of = (minutesOf: number, minor: number) => amount(making, workMinor(making, minutesOf, minor) + things);
  return { p50: of(work.handsOn.p50, work.price.p50), p90: of(work.handsOn.p90, work.price.p90) };
}

/** What the owner was told in figures last, on whichever paper: half of the cases, nine in ten of them. */
export function lastTold(making: Making): { readonly from: Money; readonly to: Money } | null {
  const offered = offerTotals(making);
  if (offered) return { from: offered.p50, to: offered.p90 };
  const asked = newestQuestion(making, (one) => one.kind === 'changed-finding');
  const estimate = (asked && seenEstimate(making)) ?? toldEstimate(making);
  const told = estimate && estimateFacts(making, estimate).price;
  return told && { from: told.p50, to: told.p90 };
}
