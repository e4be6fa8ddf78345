import { withMethod } from './ahead/choosers.ts';
import { type Policy, writeOut } from './ahead/policyTree.ts';
import { compileProblem } from './problem/compiledProblem.ts';
import type { Cancel } from './problem/effort.ts';
import type { PlanRefusal } from './problem/planRefusal.ts';
import type { Method, TracingProblem } from './problem/problem.ts';
import { startOf } from './states/planState.ts';

/** A plan from a closed machine. `expectedMinutes` is the exact expected value of `policy` as written. */
export type Plan = {
  readonly method: Method;
  readonly expectedMinutes: number;
  /** The first step; `null` when handing over at once is cheapest. */
  readonly first: string | null;
  /** Probability of the histories handed over only because they are less likely than the cut. */
  readonly cutMass: number;
  readonly policy: Policy;
};

export type PlanOptions = {
  readonly method: Method;
  /** Histories less likely than this are handed over; left out: 0 up to 14 steps, else 1e-6. */
  readonly cut?: number | undefined;
  readonly signal?: Cancel | undefined;
};

/** The cut used when none is given. */
const defaultCut = (problem: TracingProblem): number => (problem.steps.length <= 14 ? 0 : 1e-6);

/**
 * Plans a whole problem and writes the policy out.
 * Refusals: `too-many-decisions` (with the method and a cut that is sure to do), `too-many-states` (exact only, with the
 * count and the method to use), `too-much-work` (rollout only, with the method to use), `cancelled`.
 */
export function planProblem(
  problem: TracingProblem,
  options: PlanOptions,
): { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly refusal: PlanRefusal } {
  const { method, signal } = options;
  const compiled = compileProblem(problem);
  const start = startOf(compiled);
  const cut = options.cut ?? defaultCut(problem);
  const answer = withMethod(compiled, start, method, signal, ({ chooser, strides, effort }) =>
    writeOut({ compiled, start, chooser, strides, cut, method, effort }),
  );
  if (!answer.ok) return answer;
  const { policy, minutes, cutMass } = answer.value;
  const first = policy === 'hand over' ? null : policy.step;
  return { ok: true, plan: { method, expectedMinutes: minutes, first, cutMass, policy } };
}
