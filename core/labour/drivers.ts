import type { LabourEstimate } from './types.ts';

/** One run, as far as its spread is explained. */
export type Spread = {
  readonly fault: string | null;
  /** Minutes of finding it. */
  readonly tracing: number;
  /** Minutes of each piece of work, by its id. */
  readonly work: readonly (readonly [string, number])[];
};

/**
 * What drives the spread of hands-on minutes, largest first, shares adding up to one: which fault it is (the variance
 * between the faults' own means), how the finding goes with that fault, and each piece of work by itself.
 */
export function driversOf(runs: readonly Spread[]): LabourEstimate['drivers'] {
  const finding = runs.map((run) => run.tracing);
  const mean = meanOf(finding);
  let between = 0;
  for (const same of Map.groupBy(runs, (run) => run.fault).values())
    between += same.length * (meanOf(same.map((run) => run.tracing)) - mean) ** 2;
  const fault = between / runs.length;
  const work = new Map<string, number[]>();
  runs.forEach((run, at) => {
    for (const [id, minutes] of run.work) {
      const known = work.get(id) ?? new Array<number>(runs.length).fill(0);
      known[at] = (known[at] as number) + minutes;
      work.set(id, known);
    }
  });
  const parts = [
    { what: 'fault' as const, id: null, variance: fault },
    { what: 'task-times' as const, id: null, variance: Math.max(0, varianceOf(finding) - fault) },
    ...[...work].map(([id, minutes]) => ({ what: 'work' as const, id, variance: varianceOf(minutes) })),
  ];
  const all = parts.reduce((sum, part) => sum + part.variance, 0);
  if (all === 0) return [];
  return parts.map(({ what, id, variance }) => ({ what, id, share: variance / all })).sort((a, b) => b.share - a.share);
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function varianceOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
}
