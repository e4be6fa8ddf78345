/**
 * How much of the benchmark is asked for: `short` stays within three minutes for all rows together. How many truths
 * and machines the full model is tried on, and in how many processes, where this is not left to the form.
 */
export type Extent = {
  readonly short: boolean;
  readonly truths?: number;
  readonly machines?: number;
  readonly processes?: number;
};

/** One figure with the bar it has to clear; `met` is `null` where no bar was set and the figure is only shown. */
export type Figure = {
  readonly what: string;
  readonly figure: string;
  readonly bar: string;
  readonly met: boolean | null;
};

/** A drawing that a row leaves behind, written to `out/speed/NAME.svg`. */
export type Plot = { readonly name: string; readonly svg: string };

export type Measured = { readonly figures: readonly Figure[]; readonly plots?: readonly Plot[] };

/** One row of "how good it must be". Seeded: the same figures on every machine, times apart. */
export type Row = { readonly name: string; readonly measure: (extent: Extent) => Measured | Promise<Measured> };

/** A figure that must not exceed its bar. */
export function atMost(what: string, figure: number, bar: number, unit = '', digits = 3): Figure {
  const say = (value: number): string => `${digits < 0 ? value.toExponential(1) : value.toFixed(digits)}${unit}`;
  return { what, figure: say(figure), bar: `≤ ${bar}${unit}`, met: figure <= bar };
}

/** A figure that is only shown. */
export const shown = (what: string, figure: string): Figure => ({ what, figure, bar: '', met: null });

/** The value that `share` of the values do not exceed (type 1 of Hyndman & Fan 1996: no interpolation). */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
