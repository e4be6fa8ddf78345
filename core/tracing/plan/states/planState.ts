import { afterOutcome, type Belief, type CompiledProblem, massOf } from '../problem/compiledProblem.ts';

/** Where the tracing stands: what is believed, what has been done and how the machine stands open. */
export type PlanState = {
  /** P(history and fault); its total is the probability of the history. */
  readonly belief: Belief;
  /** The total of `belief`. */
  readonly mass: number;
  /** Per step: 1 when it has been done. */
  readonly done: Uint8Array;
  /** Number of the arrangement, see `Arrangements`. */
  readonly arrangement: number;
  /** Number of the outcomes so far, see `StateSpace`; 0 at the start, and where states are not numbered. */
  readonly key: number;
};

/** Nothing done, everything closed, the prior believed. */
export function startOf(compiled: CompiledProblem): PlanState {
  const belief = Float64Array.from(compiled.problem.prior);
  return { belief, mass: massOf(belief), done: new Uint8Array(compiled.stepCount), arrangement: 0, key: 0 };
}

/** A state from a live bench: any belief (it need not sum to 1), steps done, states open (numbers). */
export function stateFrom(
  compiled: CompiledProblem,
  belief: Float64Array,
  done: Uint8Array,
  open: Iterable<number>,
): PlanState {
  return { belief, mass: massOf(belief), done, arrangement: compiled.arrangements.withOpen(open), key: 0 };
}

/** One outcome (number) of a step (number). */
export type Done = { readonly step: number; readonly outcome: number };

/** The state after one more outcome, numbered `key` where states are numbered; mass 0 when it cannot happen. */
export function afterStep(compiled: CompiledProblem, state: PlanState, { step, outcome }: Done, key = 0): PlanState {
  const belief = new Float64Array(compiled.faultCount);
  const mass = afterOutcome(compiled, state.belief, step, outcome, belief);
  const done = state.done.slice();
  done[step] = 1;
  return {
    belief,
    mass,
    done,
    arrangement: compiled.arrangements.move(state.arrangement, step).to,
    key,
  };
}
