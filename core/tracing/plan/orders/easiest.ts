import { at, dot } from '../../../figures/rows.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import { clearlyLess } from '../problem/problem.ts';
import type { PlanState } from '../states/planState.ts';

/** A step counts as telling something while one of its outcomes lies between these chances. */
const SURE_NOT = 0.001;
const SURE = 0.999;

/**
 * The trade's rule of thumb (common practice, no source): of the steps that can still change the belief or cure, the
 * one with the least minutes now; processor and board swaps last. -1 when no such step is left.
 */
export function easiestStep(compiled: CompiledProblem, state: PlanState): number {
  let best = -1;
  let least = 0;
  let late = false;
  for (let s = 0; s < compiled.stepCount; s++) {
    const step = compiled.problem.steps[s];
    if (!step || state.done[s] === 1 || !isWorthDoing(compiled, state, s)) continue;
    const minutes = minutesNow(compiled, state, s);
    const sooner = step.late === late ? clearlyLess(minutes, least) : late;
    if (best < 0 || sooner) {
      best = s;
      least = minutes;
      late = step.late;
    }
  }
  return best;
}

/** Can the step still change the belief, or cure? */
function isWorthDoing(compiled: CompiledProblem, state: PlanState, s: number): boolean {
  const step = compiled.problem.steps[s];
  if (!step) return false;
  let curing = 0;
  for (let o = 0; o < step.outcomes.length; o++) {
    const chance = chanceOf(compiled, state, s, o);
    if (chance >= SURE_NOT && chance <= SURE) return true;
    if (step.cures[o]) curing += chance;
  }
  return curing >= SURE_NOT;
}

/** P(outcome) of a step now. */
export function chanceOf(compiled: CompiledProblem, state: PlanState, step: number, outcome: number): number {
  const row = compiled.problem.steps[step]?.chance[outcome];
  if (!row || state.mass <= 0) return 0;
  return dot(state.belief, row) / state.mass;
}

/** What doing the step costs now: minutes, opening and closing, and the harm expected. */
export function minutesNow(compiled: CompiledProblem, state: PlanState, s: number): number {
  const harm = compiled.problem.steps[s]?.harm;
  let minutes = at(compiled.minutes, s) + compiled.arrangements.move(state.arrangement, s).minutes;
  if (harm) {
    for (let f = 0; f < compiled.faultCount; f++) minutes += (at(state.belief, f) / state.mass) * at(harm, f);
  }
  return minutes;
}
