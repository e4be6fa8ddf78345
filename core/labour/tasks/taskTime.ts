import { zOf } from '../../figures/interval.ts';
import type { Prng } from '../../figures/prng.ts';
import { tQuantile } from '../../figures/studentT.ts';
import type { Believed, StudentT } from './normalInverseGamma.ts';

/** Minutes of a task: low and high are the 5th and 95th percentile, likely the median. */
export type ThreePoint = { readonly low: number; readonly likely: number; readonly high: number };

/** What a task will take: a Student-t on the natural logarithm of minutes. */
export type TaskTime = StudentT;

/** Stated minutes count as much as this many of the shop's own. Common practice, no source. */
export const STATED_TIMES = 6;

/** Reaches of high and low from likely that differ by more than this: no log-normal holds all three. Our own choice, no source. */
const SKEWED = 1.5;

/** z of the 5th and 95th percentile: twice this is the 3.29 between them. */
const Z95 = zOf(0.9);

/**
 * The log-normal of three points: μ = ln likely, σ = (ln high − ln low) ÷ 3.29. Skewed when likely lies far from the
 * middle of low and high on the logarithm: median and width are then kept, and the two ends are off.
 * @throws {RangeError} unless 0 < low ≤ likely ≤ high: a defect.
 */
export function logNormalOf({ low, likely, high }: ThreePoint): {
  readonly mu: number;
  readonly sigma: number;
  readonly skewed: boolean;
} {
  if (!(low > 0 && low <= likely && likely <= high && Number.isFinite(high)))
    throw new RangeError(`${low}, ${likely}, ${high} are no low, likely and high minutes`);
  const [down, up] = [Math.log(likely / low), Math.log(high / likely)];
  return {
    mu: Math.log(likely),
    sigma: Math.log(high / low) / (2 * Z95),
    skewed: Math.max(down, up) > SKEWED * Math.min(down, up),
  };
}

/** What is believed before any own time is known: as much as `STATED_TIMES` of them, with the 5th and 95th percentile where they were stated. */
export function statedBelief(stated: ThreePoint): Believed {
  const { mu, sigma } = logNormalOf(stated);
  const scale = (sigma * Z95) / tQuantile(0.95, STATED_TIMES);
  const shape = STATED_TIMES / 2;
  return { mean: mu, weight: STATED_TIMES, shape, rate: (scale * scale * shape * STATED_TIMES) / (STATED_TIMES + 1) };
}

/** Minutes below which a share `p` of such tasks is done. */
export const minutesAt = ({ middle, scale, dof }: TaskTime, p: number): number =>
  Math.exp(middle + (scale === 0 ? 0 : scale * tQuantile(p, dof)));

/** Beyond this many scales nothing is drawn: the tail of a Student-t on a logarithm has no mean. One draw in some thousands is cut. */
const FARTHEST_DRAW = 6;

/** One time by chance, in minutes (polar generation of Student's t: Bailey, Mathematics of Computation 62, 1994). */
export function drawMinutes({ middle, scale, dof }: TaskTime, random: Prng): number {
  const radius = Math.sqrt(dof * ((1 - random.next()) ** (-2 / dof) - 1));
  const t = radius * Math.cos(2 * Math.PI * random.next());
  return Math.exp(middle + scale * Math.max(-FARTHEST_DRAW, Math.min(FARTHEST_DRAW, t)));
}
