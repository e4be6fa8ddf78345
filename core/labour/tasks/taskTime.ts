import { logNormalOf, type ThreePoint, TWENTIETHS_APART } from '../../figures/logNormal.ts';
import type { Prng } from '../../figures/prng.ts';
import { tQuantile } from '../../figures/studentT.ts';
import type { Believed, StudentT } from './normalInverseGamma.ts';

/** What a task will take: a Student-t on the natural logarithm of minutes. */
export type TaskTime = StudentT;

/** Stated minutes count as much as this many of the shop's own. Common practice, no source. */
export const STATED_TIMES = 6;

/** What is believed before any own time is known: as much as `STATED_TIMES` of them, with the 5th and 95th percentile where they were stated. */
export function statedBelief(stated: ThreePoint): Believed {
  const { mu, sigma } = logNormalOf(stated);
  const scale = (sigma * (TWENTIETHS_APART / 2)) / tQuantile(0.95, STATED_TIMES);
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
