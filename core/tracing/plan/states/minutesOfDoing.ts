import type { CompiledProblem } from '../problem/compiledProblem.ts';
import { TIE } from '../problem/problem.ts';
import { chargeOf } from './chargeOf.ts';
import type { PlanState } from './planState.ts';

/** V after the i-th outcome of a step that goes on, done in arrangement `to`. */
export type ValueAfter<S extends PlanState> = (
  state: S,
  step: number,
  i: number,
  outcome: number,
  to: number,
) => number;

/**
 * Minutes × mass of doing a step in a state and going on in a stated way:
 *
 *     Q(b, s) = Σ_f b(f)·cost(s, f) + |b|·move(s) + Σ_{o going on} V(b ∘ P(o | s, ·))
 *
 * the recursion of dynamic programming over a belief that is not normalised, so that what outcomes leave to do adds up
 * (Bellman 1957; for beliefs Smallwood and Sondik, Operations Research 21, 1973). `valueAfter` gives V for the i-th
 * outcome that goes on, in arrangement `to`; 0 for one that cannot happen. While it is asked the step counts as done:
 * `state.done` must be the caller's own. Given up, with some figure above it, once more than `enough`.
 */
export function minutesOfDoing<S extends PlanState>(
  compiled: CompiledProblem,
  state: S,
  step: number,
  valueAfter: ValueAfter<S>,
  enough = Number.POSITIVE_INFINITY,
): number {
  const { price, to } = compiled.arrangements.move(state.arrangement, step);
  const outcomes = compiled.goingOn[step] ?? [];
  const most = enough * (1 + TIE);
  let minutes = chargeOf(compiled, state, step) + state.mass * price;
  state.done[step] = 1;
  for (let i = 0; i < outcomes.length && minutes <= most; i++)
    minutes += valueAfter(state, step, i, outcomes[i] ?? Number.NaN, to);
  state.done[step] = 0;
  return minutes;
}
