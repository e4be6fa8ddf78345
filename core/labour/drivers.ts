import { at } from '../figures/rows.ts';
import type { LabourEstimate } from './types.ts';

/** All runs of an estimate, as far as their spread is explained: one value of each run in each list. */
export type Spread = {
  readonly faults: readonly (string | null)[];
  /** Minutes of finding it. */
  readonly tracing: Float64Array;
  /** Minutes of each piece of work, by its id. */
  readonly work: ReadonlyMap<string, Float64Array>;
};

/**
 * What drives the spread of hands-on minutes, largest first, shares adding up to one: which fault it is (the variance
 * between the faults' own means), how the finding goes with that fault, and each piece of work by itself.
 */
export function driversOf({ faults, tracing, work }: Spread): LabourEstimate['drivers'] {
  const mean = meanOf(tracing);
  const byFault = new Map<string | null, { sum: number; count: number }>();
  faults.forEach((fault, run) => {
    const known = byFault.get(fault) ?? { sum: 0, count: 0 };
    known.sum += at(tracing, run);
    known.count += 1;
    byFault.set(fault, known);
  });
  let between = 0;
  for (const { sum, count } of byFault.values()) between += count * (sum / count - mean) ** 2;
  const fault = between / tracing.length;
  const parts = [
    { what: 'fault' as const, id: null, variance: fault },
    { what: 'task-times' as const, id: null, variance: Math.max(0, varianceOf(tracing) - fault) },
    ...[...work].map(([id, minutes]) => ({ what: 'work' as const, id, variance: varianceOf(minutes) })),
  ];
  const all = parts.reduce((sum, part) => sum + part.variance, 0);
  if (all === 0) return [];
  return parts.map(({ what, id, variance }) => ({ what, id, share: variance / all })).sort((a, b) => b.share - a.share);
}

const meanOf = (values: Float64Array): number => sumOf(values) / values.length;

/** Variance of the values themselves, divided by their count. */
function varianceOf(values: Float64Array): number {
  const mean = meanOf(values);
  let sum = 0;
  for (const value of values) sum += (value - mean) ** 2;
  return sum / values.length;
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}
