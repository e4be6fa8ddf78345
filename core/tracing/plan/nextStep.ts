import { withMethod } from './ahead/choosers.ts';
import { safeCut, writeOut } from './ahead/policyTree.ts';
import { compileProblem } from './problem/compiledProblem.ts';
import type { Cancel } from './problem/effort.ts';
import type { PlanRefusal, PlanRefusalName } from './problem/planRefusal.ts';
import type { Method, TracingProblem } from './problem/problem.ts';
import { afterStep, type PlanState, startOf } from './states/planState.ts';

/** What was done so far, first to last. */
export type LoggedOutcomes = readonly { readonly step: string; readonly outcome: string }[];

/** The id of the step to do next, or that there is none: cured already, or handing over is cheapest. */
export type Next = { readonly next: string | 'done' | 'hand over'; readonly kind: 'step' | 'done' | 'hand over' };

/**
 * The next step after what was done, by a method (no cut: only this one decision is made).
 * Refusals as in `planProblem`, and `unknown-step`, `unknown-outcome`, `step-twice`, `cannot-happen` (an outcome that
 * no fault still possible can have), `after-the-end`, each with the `entry` (counted from 0) at fault.
 */
export function nextStep(
  problem: TracingProblem,
  log: LoggedOutcomes,
  method: Method,
  signal?: Cancel,
): { readonly ok: true; readonly next: Next } | { readonly ok: false; readonly refusal: PlanRefusal } {
  const compiled = compileProblem(problem);
  let state: PlanState = startOf(compiled);
  let cured = false;
  for (const [entry, { step: id, outcome: name }] of log.entries()) {
    const at = problem.steps.findIndex((step) => step.id === id);
    const outcome = problem.steps[at]?.outcomes.indexOf(name) ?? -1;
    if (cured) return wrong('after-the-end', entry, id, name);
    if (at < 0) return wrong('unknown-step', entry, id, name);
    if (outcome < 0) return wrong('unknown-outcome', entry, id, name);
    if (state.done[at] === 1) return wrong('step-twice', entry, id, name);
    state = afterStep(compiled, state, { step: at, outcome });
    if (state.mass <= 0) return wrong('cannot-happen', entry, id, name);
    state = normalised(state);
    cured = problem.steps[at]?.cures[outcome] === true;
  }
  if (cured) return { ok: true, next: { next: 'done', kind: 'done' } };
  const answer = withMethod(compiled, state, method, signal, ({ chooser, strides, effort }) => {
    if (chooser.mayStop) return problem.steps[chooser.choose(state)]?.id;
    // A base policy stops where its own going on is dearer, so its going on has to be valued; the cut keeps that short.
    const cut = safeCut(compiled.stepCount);
    const { policy } = writeOut({ compiled, start: state, chooser, strides, cut, method, effort });
    return policy === 'hand over' ? undefined : policy.step;
  });
  if (!answer.ok) return answer;
  const { value } = answer;
  return {
    ok: true,
    next: value === undefined ? { next: 'hand over', kind: 'hand over' } : { next: value, kind: 'step' },
  };
}

/** Long logs are kept away from numbers too small to hold. */
function normalised(state: PlanState): PlanState {
  return { ...state, belief: state.belief.map((share) => share / state.mass), mass: 1 };
}

function wrong(
  refused: PlanRefusalName,
  entry: number,
  step: string,
  outcome: string,
): { ok: false; refusal: PlanRefusal } {
  return { ok: false, refusal: { refused, entry, step, outcome } };
}
