import { Arrangements } from './arrangements.ts';
import type { Problem } from './problem.ts';

/**
 * A problem laid out for fast sums: tables run fault by fault, so that taking away the belief in one fault touches
 * one stretch of memory. Made once per problem; the planners share it.
 */
export type Bench = {
  readonly problem: Problem;
  readonly arrangements: Arrangements;
  readonly faultCount: number;
  readonly stepCount: number;
  /** P(some outcome that cures | fault), at [fault × stepCount + step]. */
  readonly cure: Float64Array;
  /** Harm minutes at [fault × stepCount + step]; `undefined` when nothing can be hurt. */
  readonly harm: Float64Array | undefined;
  /** Per step: the faults it can cure. */
  readonly cures: readonly Int32Array[];
  /** Per step: outcomes that leave the tracing going on and can happen at all. */
  readonly goingOn: readonly (readonly number[])[];
  /** Per step: minutes without moves. */
  readonly minutes: Float64Array;
};

/** Lays a problem out. Costs one pass over all chances. */
export function layOut(problem: Problem): Bench {
  const faultCount = problem.faults.length;
  const stepCount = problem.steps.length;
  const cure = new Float64Array(faultCount * stepCount);
  const hurts = problem.steps.some((step) => step.harm !== undefined);
  const harm = hurts ? new Float64Array(faultCount * stepCount) : undefined;
  const minutes = new Float64Array(stepCount);
  const cures: Int32Array[] = [];
  const goingOn: number[][] = [];
  problem.steps.forEach((step, s) => {
    minutes[s] = step.minutes;
    const curable: number[] = [];
    for (let f = 0; f < faultCount; f++) {
      let total = 0;
      step.chance.forEach((row, o) => {
        if (step.cures[o]) total += row[f] ?? 0;
      });
      cure[f * stepCount + s] = total;
      if (total > 0) curable.push(f);
      if (harm && step.harm) harm[f * stepCount + s] = step.harm[f] ?? 0;
    }
    cures.push(Int32Array.from(curable));
    goingOn.push(step.outcomes.map((_, o) => o).filter((o) => !step.cures[o] && canHappen(problem, s, o)));
  });
  return {
    problem,
    arrangements: new Arrangements(problem.assembly, problem.steps),
    faultCount,
    stepCount,
    cure,
    harm,
    cures,
    goingOn,
    minutes,
  };
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
  const { harm, ending } = bench.problem.steps[step] ?? {};
  let charge = mass * (bench.minutes[step] as number);
  if (harm) for (let f = 0; f < belief.length; f++) charge += (belief[f] as number) * (harm[f] as number);
  if (ending) for (let f = 0; f < belief.length; f++) charge += (belief[f] as number) * (ending[f] as number);
  return charge;
}
