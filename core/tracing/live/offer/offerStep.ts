import type { Cancel } from '../../plan/problem/effort.ts';
import { suspectsOf } from '../belief/belief.ts';
import { posteriorOf } from '../belief/posterior.ts';
import { stepOf } from '../model/special.ts';
import { toProblem } from '../problem/toProblem.ts';
import { ownMinutes } from '../problem/weights.ts';
import type { FaultModel, Method, Proposal, StepOffer, StepView, StopAnswer, TracingCase } from '../types.ts';
import { verdictAfter } from '../verdict/verdictAfter.ts';
import { WORTH_DAYS } from './about.ts';
import { type Candidates, candidatesOf, takesDays } from './candidates.ts';
import { chosenStep, isSettled } from './chosenStep.ts';
import { openStates } from './openStates.ts';
import { minutesOf, rankSteps } from './ranking.ts';
import { sceneOf, seeStep } from './seeStep.ts';
import { stopAnswer } from './stopAnswer.ts';
import { endsTracing, type TracedSoFar } from './tracedSoFar.ts';

/** Steps shown beside the one on offer: as many as one screen holds. */
const MOST_OTHERS = 12;

/** `pairs`: two faults at once are planned for too, by default in all but the answer that must come at once. */
type OfferHow = { readonly method: Method; readonly pairs?: boolean; readonly cancel?: Cancel };

/**
 * The next step: the one with the fewest expected minutes from here, its reasons, what else could be done, what could
 * not and why. A settled verdict or a job not worth going on is answered instead of a step. All minutes are minutes of the
 * bench, waiting weighed in.
 * @throws {Halt} once `cancel` is raised, looked at between the candidates: nobody waits for the answer any more.
 */
export function offerStep(model: FaultModel, tracing: TracingCase, how: OfferHow): StepOffer {
  const { method, pairs = method !== 'ratio', cancel } = how;
  const now = soFar(model, tracing, pairs);
  const candidates = candidatesOf(now, method);
  const { live, steps, notOffered } = candidates;
  const ranking = rankSteps(model, live, now.open, { method, cancel });
  const { place, firstFor } = chosenStep(now, candidates, ranking, method);
  const scene = sceneOf({ model, tracing, live, open: now.open, suspects: now.suspects });
  const planned = isSettled(now, candidates) || place < 0 ? null : seeStep(scene, place, { offered: true, firstFor });
  const stop = planned ? null : stopAnswer(now, candidates, ranking, cancel);
  const asks = stop === null ? null : askedForMore(now, candidates, stop);
  const next = planned ?? asks;
  return {
    method,
    interim: method !== 'rollout',
    next,
    stop: next ? null : stop,
    expectedMinutes: ranking.expectedMinutes,
    easiest: { step: steps[ranking.easiest]?.id ?? null, expectedMinutes: minutesOf(ranking, ranking.easiest) },
    saved: Math.max(0, ranking.savedAgainstEasiest),
    others: ranking.steps
      .filter((one) => one.step !== place && one.step < steps.length)
      .slice(0, MOST_OTHERS)
      .map((one) => seeStep(scene, one.step)),
    notOffered,
    proposals: proposalsOf(now, candidates),
    openStates: now.open,
  };
}

/** Where their limit alone ends it, the owner is asked for more before it is handed over; null where they were. */
function askedForMore(
  { model, tracing, posterior, suspects, open }: TracedSoFar,
  { asksForMore }: Candidates,
  stop: StopAnswer,
): StepView | null {
  if (stop.stop !== 'hand-over' || stop.because !== 'dearer-than-limit' || asksForMore === null) return null;
  const live = toProblem(model, tracing, posterior, { steps: [asksForMore] });
  return seeStep(sceneOf({ model, tracing, live, open, suspects }), 0, { offered: true, firstFor: null });
}

/** What is believed and may be said. What would end it is said only with pairs counted in, as it is where it is written down. */
function soFar(model: FaultModel, tracing: TracingCase, pairs: boolean): TracedSoFar {
  const posterior = posteriorOf(model, tracing, pairs);
  const said = verdictAfter(model, tracing, posterior);
  return {
    model,
    tracing,
    posterior,
    suspects: suspectsOf(model, posterior),
    verdict: !pairs && endsTracing(said) ? verdictAfter(model, tracing) : said,
    open: openStates(model, tracing),
  };
}

/** What takes days and lacks only the owner's word for it, where it is about something suspected. */
function proposalsOf(
  { model, tracing }: TracedSoFar,
  { notOffered, chanceOfSubject }: Candidates,
): readonly Proposal[] {
  return notOffered.flatMap(({ step: id, why }) => {
    const step = stepOf(model, id);
    if (why.is !== 'word' || !takesDays(step)) return [];
    if (chanceOfSubject(step) < WORTH_DAYS) return [];
    const { handsOn, waiting } = step;
    return [{ step: id, need: why.need, handsOn, waiting, cost: ownMinutes(model, tracing, step) }];
  });
}
