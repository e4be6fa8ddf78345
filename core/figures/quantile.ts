/** The nine definitions of a sample quantile in Hyndman & Fan, American Statistician 50 (1996) 361. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** Most programs' default, R and NumPy among them; what is said of P10, P50 and P90 here is this one. */
const USUAL: QuantileType = 7;

/**
 * The value below which a share `p` of the data lies, by one of the nine definitions in use.
 * @returns `undefined` for no data.
 * @throws {RangeError} for a share outside 0..1 or data that is not finite.
 */
export function quantile(data: readonly number[], p: number, type: QuantileType = USUAL): number | undefined {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`${p} is no share`);
  if (!data.every(Number.isFinite)) throw new RangeError('A quantile needs finite data');
  if (data.length === 0) return undefined;
  return quantileOfSorted(
    data.toSorted((a, b) => a - b),
    p,
    type,
  );
}

/** The same of finite data that is sorted already, the smallest first; not a number for no data. */
export function quantileOfSorted(sorted: ArrayLike<number>, p: number, type: QuantileType = USUAL): number {
  const at = (rank: number) => sorted[Math.min(Math.max(rank, 1), sorted.length) - 1] ?? Number.NaN;
  const { rank, weight } = position(p, sorted.length, type);
  return weight === 0 ? at(rank) : weight === 1 ? at(rank + 1) : (1 - weight) * at(rank) + weight * at(rank + 1);
}

/** Rank of the datum below and how far to go from it to the next one. */
function position(p: number, n: number, type: QuantileType): { rank: number; weight: number } {
  const exact = p * n + shift(p, type);
  // A product such as 0.1 × 30 must count as the whole number it stands for.
  const rank = Math.floor(exact + 4 * Number.EPSILON * Math.max(1, n));
  const rest = Math.max(0, exact - rank) < 4 * Number.EPSILON * Math.max(1, n) ? 0 : exact - rank;
  switch (type) {
    case 1:
      return { rank, weight: rest > 0 ? 1 : 0 };
    case 2:
      return { rank, weight: rest > 0 ? 1 : 0.5 };
    case 3:
      return { rank, weight: rest > 0 || rank % 2 !== 0 ? 1 : 0 };
    default:
      return { rank, weight: rest };
  }
}

function shift(p: number, type: QuantileType): number {
  switch (type) {
    case 1:
    case 2:
    case 4:
      return 0;
    case 3:
      return -0.5;
    case 5:
      return 0.5;
    case 6:
      return p;
    case 7:
      return 1 - p;
    case 8:
      return (p + 1) / 3;
    case 9:
      return p / 4 + 3 / 8;
  }
}
