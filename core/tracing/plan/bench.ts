import { Arrangements } from './arrangements.ts';
import type { Problem, Step } from './problem.ts';

/**
 * A problem laid out for fast sums: tables run fault by fault, so that taking away the belief in one fault touches
 * one stretch of memory. Made once per problem; the planners share it.
 */
export type Bench = {
  readonly problem: Problem;
  readonly arrangements: Arrangements;
  readonly faultCount: number;
  readonly stepCount: number;
  /** Per fault: the steps that can cure it, with P(some outcome that cures | fault). */
  readonly curedBy: SparseRows;
  /** The same without what is no aim: an ending that costs as much as handing over is charged where it comes about. */
  readonly aimedBy: SparseRows;
  /** Per step: 1 when it is in `curedBy`, and in `aimedBy`, of some fault. */
  readonly cures: Uint8Array;
  readonly aims: Uint8Array;
  /** Per fault: the steps that do harm when it is the truth, with the minutes. */
  readonly harmedBy: SparseRows;
  /** Per step: P(some outcome that cures | fault) over the faults; its opposite; and the minutes that only some faults cost, harm and finishing. */
  readonly cureRow: readonly Float64Array[];
  readonly stayRow: readonly Float64Array[];
  readonly costRow: readonly (Float64Array | undefined)[];
  /** Per step: outcomes that leave the tracing going on and can happen at all. */
  readonly goingOn: readonly (readonly number[])[];
  /** Per step: minutes without moves. */
  readonly minutes: Float64Array;
};

/** Rows over the steps, one per fault, without their zeros: row f runs from `starts[f]` to before `starts[f + 1]`. */
export type SparseRows = {
  readonly starts: Int32Array;
  readonly steps: Int32Array;
  readonly amounts: Float64Array;
};

/** An ending within rounding of what handing over costs. */
const NEARLY = 1 - 1e-9;

/** Lays a problem out. Costs one pass over all chances. */
export function layOut(problem: Problem): Bench {
  const faultCount = problem.faults.length;
  const stepCount = problem.steps.length;
  const cure: (readonly [number, number])[][] = problem.faults.map(() => []);
  const aim: (readonly [number, number])[][] = problem.faults.map(() => []);
  const harm: (readonly [number, number])[][] = problem.faults.map(() => []);
  const minutes = new Float64Array(stepCount);
  const cures = new Uint8Array(stepCount);
  const aims = new Uint8Array(stepCount);
  const cureRow: Float64Array[] = [];
  const goingOn: number[][] = [];
  problem.steps.forEach((step, s) => {
    minutes[s] = step.minutes;
    const curing = step.chance.filter((_, o) => step.cures[o]);
    const chances = new Float64Array(faultCount);
    for (let f = 0; f < faultCount; f++) {
      const chance = curing.reduce((sum, row) => sum + (row[f] as number), 0);
      const minutesLost = step.harm?.[f] ?? 0;
      chances[f] = chance;
      if (chance > 0) {
        cure[f]?.push([s, chance]);
        cures[s] = 1;
        if ((step.ending?.[f] ?? 0) < chance * problem.handOver * NEARLY) {
          aim[f]?.push([s, chance]);
          aims[s] = 1;
        }
      }
      if (minutesLost > 0) harm[f]?.push([s, minutesLost]);
    }
    cureRow.push(chances);
    goingOn.push(step.outcomes.map((_, o) => o).filter((o) => !step.cures[o] && canHappen(problem, s, o)));
  });
  return {
    problem,
    arrangements: new Arrangements(problem.assembly, problem.steps),
    faultCount,
    stepCount,
    curedBy: sparseRows(cure),
    aimedBy: sparseRows(aim),
    cures,
    aims,
    harmedBy: sparseRows(harm),
    cureRow,
    stayRow: cureRow.map((row) => row.map((chance) => 1 - chance)),
    costRow: problem.steps.map((step) => costRowOf(step, faultCount)),
    goingOn,
    minutes,
  };
}

function sparseRows(rows: readonly (readonly (readonly [number, number])[])[]): SparseRows {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach((row, f) => {
    starts[f + 1] = (starts[f] as number) + row.length;
  });
  const entries = rows.flat();
  return {
    starts,
    steps: Int32Array.from(entries, ([step]) => step),
    amounts: Float64Array.from(entries, ([, amount]) => amount),
  };
}

/** Adds `weight` times one sparse row to a full one. */
export function addRow(into: Float64Array, { starts, steps, amounts }: SparseRows, row: number, weight: number): void {
  const end = starts[row + 1] as number;
  for (let i = starts[row] as number; i < end; i++) {
    const s = steps[i] as number;
    into[s] = (into[s] as number) + weight * (amounts[i] as number);
  }
}

/** What a step costs when a fault is the truth, beyond what it costs always; nothing when that is 0 for all. */
function costRowOf({ harm, ending }: Step, faultCount: number): Float64Array | undefined {
  if (!harm && !ending) return undefined;
  const row = new Float64Array(faultCount);
  for (let f = 0; f < faultCount; f++) row[f] = (harm?.[f] ?? 0) + (ending?.[f] ?? 0);
  return row.some((minutes) => minutes !== 0) ? row : undefined;
}

const canHappen = ({ prior, steps }: Problem, step: number, outcome: number): boolean =>
  prior.some((weight, f) => weight > 0 && (steps[step]?.chance[outcome]?.[f] ?? 0) > 0);

/** A belief that need not sum to 1: its total is the probability of the history that led to it. */
export type Belief = Float64Array;

export function massOf(belief: Belief): number {
  let mass = 0;
  for (let f = 0; f < belief.length; f++) mass += belief[f] as number;
  return mass;
}

/** The belief after an outcome, into `into`; returns its mass (0: the outcome cannot happen). */
export function afterOutcome(bench: Bench, belief: Belief, step: number, outcome: number, into: Belief): number {
  const row = bench.problem.steps[step]?.chance[outcome];
  if (!row) throw new Error(`no outcome ${outcome} of step ${step}`);
  let mass = 0;
  for (let f = 0; f < belief.length; f++) {
    const left = (belief[f] as number) * (row[f] as number);
    into[f] = left;
    mass += left;
  }
  return mass;
}

/** Minutes × mass charged for doing the step now, finishing included, opening and closing left out. */
export function chargeOf(bench: Bench, belief: Belief, mass: number, step: number): number {
  const cost = bench.costRow[step];
  let charge = mass * (bench.minutes[step] as number);
  if (cost) for (let f = 0; f < belief.length; f++) charge += (belief[f] as number) * (cost[f] as number);
  return charge;
}
