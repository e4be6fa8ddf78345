import { addAt, sumOf, wholeAt } from '../../../figures/rows.ts';
import { Arrangements } from './arrangements.ts';
import type { Step, TracingProblem } from './problem.ts';

/**
 * A problem laid out for fast sums: tables run fault by fault, so that taking away the belief in one fault touches
 * one stretch of memory. Made once per problem; the planners share it and change nothing but `arrangements`, which
 * numbers what it meets. All minutes are minutes of the bench.
 */
export type CompiledProblem = {
  readonly problem: TracingProblem;
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
export function compileProblem(problem: TracingProblem): CompiledProblem {
  const faultCount = problem.faults.length;
  const stepCount = problem.steps.length;
  const minutes = Float64Array.from(problem.steps, (step) => step.minutes);
  const cureRow = problem.steps.map((step) => cureRowOf(step, faultCount));
  const curedBy = sparseRows(faultCount, cureRow);
  const aimedBy = sparseRows(
    faultCount,
    cureRow.map((row, s) => aimRowOf(row, problem.steps[s]?.ending, problem.handOver)),
  );
  return {
    problem,
    arrangements: new Arrangements(problem.assembly, problem.steps),
    faultCount,
    stepCount,
    curedBy,
    aimedBy,
    cures: among(stepCount, curedBy),
    aims: among(stepCount, aimedBy),
    harmedBy: sparseRows(
      faultCount,
      problem.steps.map((step) => step.harm),
    ),
    cureRow,
    stayRow: cureRow.map((row) => row.map((chance) => 1 - chance)),
    costRow: problem.steps.map((step) => costRowOf(step, faultCount)),
    goingOn: problem.steps.map((step, s) =>
      step.outcomes.map((_, o) => o).filter((o) => !step.cures[o] && canHappen(problem, s, o)),
    ),
    minutes,
  };
}

/** P(some outcome that cures | fault). */
function cureRowOf({ chance, cures }: Step, faultCount: number): Float64Array {
  const row = new Float64Array(faultCount);
  chance.forEach((own, o) => {
    if (cures[o]) own.forEach((p, f) => void addAt(row, f, p));
  });
  return row;
}

/** A cure row without the faults for which the ending costs as much as handing over. */
const aimRowOf = (cure: Float64Array, ending: Float64Array | undefined, handOver: number): Float64Array =>
  cure.map((chance, f) => ((ending?.[f] ?? 0) < chance * handOver * NEARLY ? chance : 0));

/** One row per fault out of one row per step; a step without a row has zeros. */
function sparseRows(faultCount: number, ofSteps: readonly (Float64Array | undefined)[]): SparseRows {
  const starts = new Int32Array(faultCount + 1);
  for (const row of ofSteps)
    row?.forEach((amount, f) => {
      if (amount > 0) starts[f + 1] = wholeAt(starts, f + 1) + 1;
    });
  for (let f = 0; f < faultCount; f++) starts[f + 1] = wholeAt(starts, f + 1) + wholeAt(starts, f);
  const steps = new Int32Array(wholeAt(starts, faultCount));
  const amounts = new Float64Array(steps.length);
  const next = starts.slice();
  ofSteps.forEach((row, s) => {
    row?.forEach((amount, f) => {
      if (!(amount > 0)) return;
      const place = wholeAt(next, f);
      steps[place] = s;
      amounts[place] = amount;
      next[f] = place + 1;
    });
  });
  return { starts, steps, amounts };
}

/** 1 for each step that stands in some of the rows. */
function among(stepCount: number, { steps }: SparseRows): Uint8Array {
  const stands = new Uint8Array(stepCount);
  for (const s of steps) stands[s] = 1;
  return stands;
}

/** Adds `weight` times one sparse row to a full one. */
export function addRow(into: Float64Array, { starts, steps, amounts }: SparseRows, row: number, weight: number): void {
  const end = starts[row + 1] ?? NaN;
  for (let i = starts[row] ?? NaN; i < end; i++) {
    const s = steps[i] ?? NaN;
    into[s] = (into[s] ?? NaN) + weight * (amounts[i] ?? NaN);
  }
}

/** What a step costs when a fault is the truth, beyond what it costs always; nothing when that is 0 for all. */
function costRowOf({ harm, ending }: Step, faultCount: number): Float64Array | undefined {
  if (!harm && !ending) return undefined;
  const row = new Float64Array(faultCount);
  for (let f = 0; f < faultCount; f++) row[f] = (harm?.[f] ?? 0) + (ending?.[f] ?? 0);
  return row.some((minutes) => minutes !== 0) ? row : undefined;
}

const canHappen = ({ prior, steps }: TracingProblem, step: number, outcome: number): boolean =>
  prior.some((weight, f) => weight > 0 && (steps[step]?.chance[outcome]?.[f] ?? 0) > 0);

/** A belief that need not sum to 1: its total is the probability of the history that led to it. */
export type Belief = Float64Array;

/** P(history): the total of a belief. */
export const massOf = (belief: Belief): number => sumOf(belief);

/**
 * The belief after an outcome, b(f)·P(outcome | step, f), into `into`; answers its mass (0: the outcome cannot happen).
 * @throws {RangeError} for a step or outcome that the problem does not have: a defect.
 */
export function afterOutcome(
  { problem }: CompiledProblem,
  belief: Belief,
  step: number,
  outcome: number,
  into: Belief,
): number {
  const row = problem.steps[step]?.chance[outcome];
  if (!row) throw new RangeError(`no outcome ${outcome} of step ${step}`);
  let mass = 0;
  for (let f = 0; f < belief.length; f++) {
    const left = (belief[f] ?? NaN) * (row[f] ?? NaN);
    into[f] = left;
    mass += left;
  }
  return mass;
}
