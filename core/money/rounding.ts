/**
 * How a value between two whole minor units is rounded. Halves: `half-up` away from zero, `half-down` towards it,
 * `half-even` to the even neighbour; `down` cuts off towards zero, `up` goes away from it.
 */
export const ROUNDINGS = ['half-up', 'half-even', 'half-down', 'down', 'up'] as const;
export type Rounding = (typeof ROUNDINGS)[number];

/**
 * A fraction rounded to a whole number, exactly: no binary fraction on the way (1.005 × 100 is not 100.5 in those).
 * Rules as in Cowlishaw, General Decimal Arithmetic.
 * @throws {RangeError} for a denominator that is not positive: a defect.
 */
export function roundFraction(numerator: bigint, denominator: bigint, rounding: Rounding): bigint {
  if (denominator <= 0n) throw new RangeError('A fraction to round needs a denominator above zero');
  const size = numerator < 0n ? -numerator : numerator;
  const whole = size / denominator;
  const rest = size % denominator;
  const rounded = whole + (goesUp() ? 1n : 0n);
  return numerator < 0n ? -rounded : rounded;

  function goesUp(): boolean {
    const half = rest * 2n - denominator;
    switch (rounding) {
      case 'half-up':
        return half >= 0n;
      case 'half-down':
        return half > 0n;
      case 'half-even':
        return half > 0n || (half === 0n && whole % 2n === 1n);
      case 'down':
        return false;
      case 'up':
        return rest > 0n;
    }
  }
}

/**
 * A whole number that a double holds exactly.
 * @throws {RangeError} beyond ±(2^53 − 1): no amount of a shop.
 */
export function toSafe(value: bigint): number {
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new RangeError(`${value} minor units are more than can be counted exactly`);
  return number;
}
