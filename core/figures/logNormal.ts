import { zOf } from './interval.ts';
import type { Prng } from './prng.ts';

/** Low and high are the 5th and 95th percentile, likely the median; of one unit, above zero. */
export type ThreePoint = { readonly low: number; readonly likely: number; readonly high: number };

/** Something whose natural logarithm is normal: μ and σ of that logarithm. The median is e^μ. */
export type LogNormal = { readonly mu: number; readonly sigma: number };

/** Standard deviations of a normal between its 5th and 95th percentile (3.29), and its 10th and 90th (2.56). */
export const TWENTIETHS_APART = 2 * zOf(0.9);
export const TENTHS_APART = 2 * zOf(0.8);

/** Reaches of high and low from likely that differ by more than this: no log-normal holds all three. Our own choice, no source. */
const SKEWED = 1.5;

/**
 * The log-normal of three points: μ = ln likely, σ = (ln high − ln low) ÷ 3.29. Skewed when likely lies far from the
 * middle of low and high on the logarithm: median and width are then kept, and the two ends are off.
 * @throws {RangeError} unless 0 < low ≤ likely ≤ high: a defect.
 */
export function logNormalOf({ low, likely, high }: ThreePoint): LogNormal & { readonly skewed: boolean } {
  if (!(low > 0 && low <= likely && likely <= high && Number.isFinite(high)))
    throw new RangeError(`${low}, ${likely}, ${high} are no low, likely and high of anything`);
  const [down, up] = [Math.log(likely / low), Math.log(high / likely)];
  return {
    mu: Math.log(likely),
    sigma: Math.log(high / low) / TWENTIETHS_APART,
    skewed: Math.max(down, up) > SKEWED * Math.min(down, up),
  };
}

/** One value by chance, in the unit of the median. */
export const drawLogNormal = ({ mu, sigma }: LogNormal, random: Prng): number =>
  Math.exp(mu + sigma * random.nextNormal());
