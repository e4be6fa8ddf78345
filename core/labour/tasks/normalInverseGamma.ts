/**
 * What is believed of a normal figure whose mean and variance are both unknown: mean given variance is normal about
 * `mean` with `weight` observations' worth, the variance is inverse gamma with `shape` and `rate`.
 */
export type Believed = {
  readonly mean: number;
  readonly weight: number;
  readonly shape: number;
  readonly rate: number;
};

/** A Student-t: its middle, its scale, its degrees of freedom. */
export type StudentT = { readonly middle: number; readonly scale: number; readonly dof: number };

/** The belief after these observations (conjugate update; Hoff, A First Course in Bayesian Statistical Methods, section 5.3). */
export function updated(prior: Believed, seen: readonly number[]): Believed {
  const n = seen.length;
  if (n === 0) return prior;
  const average = seen.reduce((sum, one) => sum + one, 0) / n;
  const scatter = seen.reduce((sum, one) => sum + (one - average) ** 2, 0);
  const weight = prior.weight + n;
  return {
    mean: (prior.weight * prior.mean + n * average) / weight,
    weight,
    shape: prior.shape + n / 2,
    rate: prior.rate + scatter / 2 + (prior.weight * n * (average - prior.mean) ** 2) / (2 * weight),
  };
}

/** What the next observation will be, the variance not known either. */
export const nextOne = ({ mean, weight, shape, rate }: Believed): StudentT => ({
  middle: mean,
  scale: Math.sqrt((rate * (weight + 1)) / (shape * weight)),
  dof: 2 * shape,
});

/** Where the mean itself lies. */
export const meanOf = ({ mean, weight, shape, rate }: Believed): StudentT => ({
  middle: mean,
  scale: Math.sqrt(rate / (shape * weight)),
  dof: 2 * shape,
});

/** The same middle and spread, known only as well as `most` observations would tell. */
export function knownNoBetterThan(believed: Believed, most: number): Believed {
  const shape = Math.min(believed.shape, most / 2);
  return {
    mean: believed.mean,
    weight: Math.min(believed.weight, most),
    shape,
    rate: (believed.rate * shape) / believed.shape,
  };
}
