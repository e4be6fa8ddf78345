import { incompleteBeta, inverse } from './specialFunctions.ts';

/** Wide enough for every share between a millionth and its opposite, at one degree of freedom. */
const FARTHEST = 1e6;

/** The chance that Student's t with so many degrees of freedom lies below `t` (Abramowitz & Stegun 26.7.1, by the incomplete beta function). */
export function tBelow(t: number, dof: number): number {
  const whole = dof + t * t;
  // Near the middle the share between −t and t is small, far out the share beyond: the small one is the exact one.
  if (t * t < dof) return 0.5 + (Math.sign(t) * incompleteBeta((t * t) / whole, 0.5, dof / 2)) / 2;
  const beyond = incompleteBeta(dof / whole, dof / 2, 0.5) / 2;
  return t < 0 ? beyond : 1 - beyond;
}

/**
 * The t below which a share `p` lies.
 * @throws {RangeError} for a share that is not between 0 and 1, or no degrees of freedom: a defect.
 */
export function tQuantile(p: number, dof: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`${p} is no share between 0 and 1`);
  if (!(dof > 0)) throw new RangeError(`${dof} are no degrees of freedom`);
  return inverse((t) => tBelow(t, dof), p, -FARTHEST, FARTHEST);
}
