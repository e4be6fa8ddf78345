/** Lanczos coefficients for g = 7, nine terms (Lanczos 1964; values as commonly printed, checked here against factorials). */
const LANCZOS_FIRST = 0.99999999999980993;
const LANCZOS: readonly number[] = [
  676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

const ENOUGH = 1e-16;
const MOST_TERMS = 10_000;

/** ln Γ(x) for x > 0. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const sum = LANCZOS.reduce((all, coefficient, index) => all + coefficient / (x + index), LANCZOS_FIRST);
  const t = x + 6.5;
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

/** P(a, x), the regularised lower incomplete gamma function (Abramowitz & Stegun 6.5.29 below a + 1, 6.5.31 above). */
export function lowerGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  const scale = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && term > sum * ENOUGH; n += 1) {
      term *= x / (a + n);
      sum += term;
    }
    return sum * scale;
  }
  const fraction = continued(x + 1 - a, (n) => [-n * (n - a), x + 2 * n + 1 - a]);
  return 1 - scale / fraction;
}

/** I_x(a, b), the regularised incomplete beta function (Abramowitz & Stegun 26.5.8, mirrored where it converges faster). */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const scale = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  const fraction = continued(1, (n) => {
    const m = Math.floor(n / 2);
    const even = n % 2 === 0;
    const up = even ? m * (b - m) * x : -(a + m) * (a + b + m) * x;
    return [up / ((a + 2 * m - (even ? 1 : 0)) * (a + 2 * m + (even ? 0 : 1))), 1];
  });
  return scale / fraction;
}

/** Φ(z), by way of the incomplete gamma function. */
export const normalBelow = (z: number): number => {
  const half = lowerGamma(0.5, (z * z) / 2) / 2;
  return z < 0 ? 0.5 - half : 0.5 + half;
};

/** The argument between `low` and `high` at which a rising function reaches `target`, halved down to the last bit. */
export function inverse(rising: (x: number) => number, target: number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let middle = (from + to) / 2; middle > from && middle < to; middle = (from + to) / 2) {
    if (rising(middle) < target) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** b0 + a1 / (b1 + a2 / (b2 + …)) by the forward rule of Lentz (Thompson & Barnett 1986). `terms(n)` gives [aₙ, bₙ], n from 1. */
function continued(b0: number, terms: (n: number) => readonly [number, number]): number {
  const tiny = 1e-300;
  let value = b0 || tiny;
  let [c, d] = [value, 0];
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const [a, b] = terms(n);
    d = 1 / (b + a * d || tiny);
    c = b + a / c || tiny;
    const step = c * d;
    value *= step;
    if (Math.abs(step - 1) < ENOUGH * 4) break;
  }
  return value;
}
