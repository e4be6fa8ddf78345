import { TENTHS_APART, type ThreePoint, TWENTIETHS_APART } from '../../figures/logNormal.ts';
import { normalQuantile } from '../../figures/normalQuantile.ts';
import { normalBelow } from '../../figures/specialFunctions.ts';

/** 10th, 50th and 90th percentile. */
export type Percentiles = { readonly p10: number; readonly p50: number; readonly p90: number };
/** Farther out nothing is known any more: what is left is then drawn as if it were just there. */
const FARTHEST = 0.999;
/** Figures of nothing are taken as a tenth of a minute, so that they have a logarithm. */
const LEAST = 0.1;

const ln = (value: number) => Math.log(Math.max(LEAST, value));

/**
 * What is left of something that has taken `spent` so far, in the same unit: a log-normal through median and width,
 * given that it was not over by then. A job that runs long has more before it than was thought, never nothing.
 * @returns The value below which it stays with chance `u` (0 < u < 1); never falls when `u` rises.
 */
export function leftOf(mu: number, sigma: number, spent: number): (u: number) => number {
  if (sigma <= 0) return () => Math.max(0, Math.exp(mu) - spent);
  const gone = Math.min(spent, Math.exp(mu + sigma * normalQuantile(FARTHEST)));
  const over = gone <= 0 ? 0 : normalBelow((Math.log(gone) - mu) / sigma);
  return (u) => Math.max(0, Math.exp(mu + sigma * normalQuantile(over + (1 - over) * u)) - gone);
}

/** Hands-on minutes that a job still needs, by its newest estimate of the whole and what was spent. */
export const minutesLeft = ({ p10, p50, p90 }: Percentiles, spent: number): ((u: number) => number) =>
  leftOf(ln(p50), (ln(p90) - ln(p10)) / TENTHS_APART, spent);

/** What is left of any span that has taken `spent` so far, in the same unit. */
export const spanLeft = ({ low, likely, high }: ThreePoint, spent: number): ((u: number) => number) =>
  leftOf(ln(likely), (ln(high) - ln(low)) / TWENTIETHS_APART, spent);
