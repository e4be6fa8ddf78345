import { layOut } from './bench.ts';
import { withMethod } from './choosers.ts';
import type { Cancel } from './effort.ts';
import type { PlanRefusal, PlanRefusalName } from './planRefusal.ts';
import { safeCut, writeOut } from './policyTree.ts';
import type { Method, Problem } from './problem.ts';
import { afterStep, type Stand, startOf } from './stand.ts';

/** What was done so far, first to last. */
export type Log = readonly { readonly step: string; readonly outcome: string }[];

/** The id of the step to do next, or that there is none: cured already, or handing over is cheapest. */
export type Next = { readonly next: string | 'done' | 'hand over'; readonly kind: 'step' | 'done' | 'hand over' };

/**
 * The next step after what was done, by a method (no cut: only this one decision is made).
 * Refusals as in `planProblem`, and `unknown-step`, `unknown-outcome`, `step-twice`, `cannot-happen` (an outcome that
 * no fault still possible can have), `after-the-end`, each with the `entry` (counted from 0) at fault.
 */
export function nextStep(
  problem: Problem,
  log: Log,
  method: Method,
  signal?: Cancel,
): { readonly ok: true; readonly next: Next } | { readonly ok: false; readonly refusal: PlanRefusal } {
  const bench = layOut(problem);
  let stand: Stand = startOf(bench);
  let cured = false;
  for (const [entry, { step: id, outcome: name }] of log.entries()) {
    const at = problem.steps.findIndex((step) => step.id === id);
    const outcome = problem.steps[at]?.outcomes.indexOf(name) ?? -1;
    if (cured) return wrong('after-the-end', entry, id, name);
    if (at < 0) return wrong('unknown-step', entry, id, name);
    if (outcome < 0) return wrong('unknown-outcome', entry, id, name);
    if (stand.done[at] === 1) return wrong('step-twice', entry, id, name);
    stand = afterStep(bench, stand, at, outcome);
    if (stand.mass <= 0) return wrong('cannot-happen', entry, id, name);
    stand = normalised(stand);
    cured = problem.steps[at]?.cures[outcome] === true;
  }
  if (cured) return { ok: true, next: { next: 'done', kind: 'done' } };
  const answer = withMethod(bench, stand, method, signal, ({ chooser, strides, effort }) => {
    if (chooser.mayStop) return problem.steps[chooser.choose(stand)]?.id;
    // A base policy stops where its own going on is dearer, so its going on has to be valued; the cut keeps that short.
    const { policy } = writeOut(bench, stand, chooser, strides, safeCut(bench.stepCount), method, effort);
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
function normalised(stand: Stand): Stand {
  return { ...stand, belief: stand.belief.map((share) => share / stand.mass), mass: 1 };
}

function wrong(
  refused: PlanRefusalName,
  entry: number,
  step: string,
  outcome: string,
): { ok: false; refusal: PlanRefusal } {
  return { ok: false, refusal: { refused, entry, step, outcome } };
}
