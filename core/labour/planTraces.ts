import type { Prng } from '../figures/prng.ts';
import type { FaultModel } from '../tracing/live/types.ts';
import type { Step as PlanStep } from '../tracing/plan/problem/problem.ts';
import type { Decisions } from './decisions.ts';
import { draw, MOST_TRACED_STEPS, stepMinutes, type Traces } from './traced.ts';

/**
 * Runs through the plan of a case: a true hypothesis drawn from the belief, the policy until a step ends the tracing or it is
 * handed over. They end where the plan sees the end: quick, and shorter than what the Bench does to be sure.
 */
export function planTraces(
  model: FaultModel,
  { live, start, stepAt, after, move, closing, histories }: Decisions,
): Traces {
  const faultOf = (h: number) => model.faults[live.hypotheses[h]?.hypothesis.first ?? -1]?.id ?? null;
  return {
    histories,
    run: (stepTimes, random) => {
      const truth = draw(live.problem.prior, random);
      let moment = start;
      let minutes = 0;
      for (let n = 0; n < MOST_TRACED_STEPS; n++) {
        const s = stepAt(moment);
        const [plan, step] = [live.problem.steps[s], live.steps[s]];
        if (!plan || !step) return { minutes: minutes + closing(moment), fault: null, ended: false };
        const outcome = outcomeOf(plan, truth, random);
        minutes += move(moment, s).minutes + stepMinutes(step, stepTimes, random);
        if (plan.cures[outcome])
          return { minutes: minutes + endingMinutes(plan, truth), fault: faultOf(truth), ended: true };
        moment = after(moment, s, outcome);
      }
      return { minutes, fault: null, ended: false };
    },
  };
}

/** What comes out of a step where this hypothesis is the true one; the last outcome where rounding leaves a little over. */
function outcomeOf({ chance }: PlanStep, truth: number, random: Prng): number {
  let left = random.next();
  for (let outcome = 0; outcome < chance.length; outcome++) {
    left -= chance[outcome]?.[truth] ?? 0;
    if (left < 0) return outcome;
  }
  return chance.length - 1;
}

/**
 * Minutes that finishing takes once a step has ended the tracing, confirming or going on from a wrong end. The plan
 * counts them as often as the step ends it: here it did.
 */
export function endingMinutes({ ending, chance, cures }: PlanStep, truth: number): number {
  const ends = chance.reduce((sum, of, outcome) => sum + (cures[outcome] ? (of[truth] ?? 0) : 0), 0);
  return ends > 0 ? (ending?.[truth] ?? 0) / ends : 0;
}
