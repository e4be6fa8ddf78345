import { incompleteBeta, inverse, lowerGamma, normalBelow } from './specialFunctions.ts';

/** Limits between which a figure lies with the confidence asked for. */
export type Interval = { readonly low: number; readonly high: number };

/** How sure an interval is to hold, two-sided, unless said otherwise: the usual choice of the sciences. Common practice, no source. */
export const CONFIDENCE = 0.95;

/**
 * Wilson's score interval for a share: `count` of `of` (Wilson 1927; method 3 of Newcombe, Statistics in Medicine 17,
 * 1998). Its cover is right on average; for one that never covers too little, `clopperPearson`.
 * @throws {RangeError} unless both are whole, 0 ≤ count ≤ of, and of > 0: a defect.
 */
export function wilson(count: number, of: number, confidence: number = CONFIDENCE): Interval {
  mustBeShare(count, of);
  const z = zOf(confidence);
  const share = count / of;
  const middle = share + (z * z) / (2 * of);
  const reach = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const scale = 1 + (z * z) / of;
  return {
    low: count === 0 ? 0 : (middle - reach) / scale,
    high: count === of ? 1 : (middle + reach) / scale,
  };
}

/**
 * The exact interval of Clopper and Pearson (Biometrika 26, 1934) for a share: never covers less than it says, and is
 * wider for it.
 * @throws {RangeError} as `wilson`.
 */
export function clopperPearson(count: number, of: number, confidence: number = CONFIDENCE): Interval {
  mustBeShare(count, of);
  const tail = tailOf(confidence);
  return {
    low: count === 0 ? 0 : inverse((p) => incompleteBeta(p, count, of - count + 1), tail, 0, 1),
    high: count === of ? 1 : inverse((p) => incompleteBeta(p, count + 1, of - count), 1 - tail, 0, 1),
  };
}

/**
 * Exact limits for the mean of a count (Garwood, Biometrika 28, 1936): so many failures were seen, so many were to be
 * expected. Divide by the exposure for a rate.
 * @throws {RangeError} for a count that is not whole or below zero.
 */
export function garwood(count: number, confidence: number = CONFIDENCE): Interval {
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`${count} is no count`);
  const tail = tailOf(confidence);
  const beyond = 20 + count + 20 * Math.sqrt(count + 1) - 2 * Math.log(tail);
  return {
    low: count === 0 ? 0 : inverse((mean) => lowerGamma(count, mean), tail, 0, beyond),
    high: inverse((mean) => lowerGamma(count + 1, mean), 1 - tail, 0, beyond),
  };
}

/**
 * Failures for each unit of exposure (part-years, drive-days …), with its exact limits.
 * @throws {RangeError} for exposure that is not above zero.
 */
export function rateOf(
  count: number,
  exposure: number,
  confidence: number = CONFIDENCE,
): Interval & { readonly rate: number } {
  if (!(exposure > 0) || !Number.isFinite(exposure)) throw new RangeError(`${exposure} is no exposure`);
  const { low, high } = garwood(count, confidence);
  return { rate: count / exposure, low: low / exposure, high: high / exposure };
}

/** The z between whose negative and itself a normal figure lies with this confidence: 1.96 for 0.95. */
export const zOf = (confidence: number): number => inverse(normalBelow, 1 - tailOf(confidence), 0, 40);

function tailOf(confidence: number): number {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`${confidence} is no confidence between 0 and 1`);
  return (1 - confidence) / 2;
}

function mustBeShare(count: number, of: number): void {
  const whole = Number.isInteger(count) && Number.isInteger(of);
  if (!whole || count < 0 || of <= 0 || count > of) throw new RangeError(`${count} of ${of} is no share`);
}
