import { at, dot } from '../../../figures/rows.ts';
import { type Ranking, StepRanker } from '../../plan/ahead/rank.ts';
import { compileProblem } from '../../plan/problem/compiledProblem.ts';
import type { Cancel } from '../../plan/problem/effort.ts';
import type { Step } from '../../plan/problem/problem.ts';
import { stateFrom } from '../../plan/states/planState.ts';
import type { LiveProblem } from '../problem/toProblem.ts';
import type { FaultModel, Method, StateId } from '../types.ts';

/**
 * All steps of a live problem with their expected minutes, from the states that stand open; what tells and ends nothing is
 * left out.
 * @throws {Halt} once `cancel` is raised.
 */
export function rankSteps(
  model: FaultModel,
  live: LiveProblem,
  open: readonly StateId[],
  { method, cancel }: { readonly method: Method; readonly cancel?: Cancel | undefined },
): Ranking {
  const { problem } = live;
  const compiled = compileProblem(problem);
  const stateAt = new Map(model.states.map((state, at) => [state.id, at]));
  const state = stateFrom(
    compiled,
    Float64Array.from(problem.prior),
    Uint8Array.from(problem.steps, (step) =>
      tells(step.chance, problem.prior) < TELLS_NOTHING && !mayEnd(step, problem.prior) ? 1 : 0,
    ),
    open.flatMap((id) => stateAt.get(id) ?? []),
  );
  return new StepRanker(compiled, method === 'rollout' ? 2 : 1, cancel).rank(state);
}

/** Expected minutes when this step is done next; those of handing over where it is not among those ranked. */
export const minutesOf = (ranking: Ranking, step: number): number =>
  ranking.steps.find((one) => one.step === step)?.expectedMinutes ?? ranking.stopping;

/** A step that moves the belief by less than this, whatever comes out, is not planned with. Common practice, no source. */
const TELLS_NOTHING = 0.004;

/** An ending rarer than this makes no step worth planning with by itself. Common practice, no source. */
const MAY_END_FROM = 0.02;

const mayEnd = ({ cures, chance }: Step, prior: Float64Array): boolean =>
  chance.some((row, o) => cures[o] === true && dot(row, prior) > MAY_END_FROM);

/** How far the outcomes move the belief: expected total variation, ½ Σ_o Σ_w P(w) · |P(o | w) − P(o)|, 0..1. */
function tells(chance: readonly Float64Array[], prior: Float64Array): number {
  let moved = 0;
  for (const row of chance) {
    const p = dot(prior, row);
    for (let w = 0; w < prior.length; w++) moved += at(prior, w) * Math.abs(at(row, w) - p);
  }
  return moved / 2;
}
