import type { Ranking } from '../../plan/ahead/rank.ts';
import { seenToFailFirst } from '../problem/provoke.ts';
import type { Method, Step, StepId } from '../types.ts';
import { moreMayBeWrong } from '../verdict/elseWrong.ts';
import { isFoundOut, isNewPart } from '../verdict/lastWord.ts';
import type { Candidates } from './candidates.ts';
import { firstLook, firstMoves } from './firstMoves.ts';
import { endsTracing, namedPart, type TracedSoFar } from './tracedSoFar.ts';

/** The step to offer: its place among the candidates' steps, negative for none, and the held one that it only opens the way to. */
export type StepChoice = { readonly place: number; readonly firstFor: StepId | null };

/**
 * Is it at its end, nothing owed any more? Where a part is found: is the machine whole with a new one? Ours in its place may
 * show it, so it is not ended before.
 */
export function isSettled({ model, posterior, verdict }: TracedSoFar, { owes }: Candidates): boolean {
  if (!endsTracing(verdict) || owes.length > 0) return false;
  return !(
    verdict.verdict === 'confirmed' &&
    verdict.way !== 'both-ways' &&
    moreMayBeWrong(model, posterior, verdict.part)
  );
}

/**
 * The step to do next: what the method plans, or what opens the way to it; with nothing planned a trial that may make it
 * fail; where it could end, what is owed first; and before the plan what every technician does first.
 */
export function chosenStep(now: TracedSoFar, candidates: Candidates, ranking: Ranking, method: Method): StepChoice {
  const { model, tracing, suspects, verdict, open } = now;
  const { live, steps, held, owes } = candidates;
  const wanted = method === 'easiest' ? ranking.easiest : method === 'ratio' ? ranking.ratio : ranking.best;
  const plan = openedFirst(candidates, wanted);
  const tries = plan.place < 0 && namedPart(now) === null && live.handOver.by !== 'worth';
  const planOrTrial = tries ? openedFirst(candidates, seenToFailFirst(model, tracing, live, held)) : plan;
  const planned = planOrTrial.place;
  const planOrKnown = saysEnough(now, candidates, planned) ? -1 : orFirstLook(now, candidates, planned);
  const mayEnd = owes.length > 0 && (endsTracing(verdict) || planOrKnown < 0);
  const planOrOwed = mayEnd ? firstOwed(candidates) : planOrKnown;
  const place =
    method === 'easiest'
      ? planOrOwed
      : firstMoves({ model, tracing, steps, suspects, open }, planOrOwed, planOrTrial.heldBack ?? undefined);
  return { place, firstFor: planOrTrial.heldBack && place === planned ? planOrTrial.heldBack.id : null };
}

/** A place among all that is planned with, as one among what can be done now, and the held step that it only opens. */
type Opened = { readonly place: number; readonly heldBack: Step | null };

/** What is held back is worth its opening steps, and is never done itself: the first of them is the one to do now. */
function openedFirst({ steps, held }: Candidates, wanted: number): Opened {
  const back = held[wanted - steps.length];
  if (!back) return { place: wanted, heldBack: null };
  const [opener] = back.firstDo;
  return { place: opener ? steps.indexOf(opener) : -1, heldBack: back.step };
}

/** Found out already, and nothing that can be done would mend it: no loaner tells more; or the new part goes back anyhow. */
function saysEnough(now: TracedSoFar, { steps, held }: Candidates, planned: number): boolean {
  const { tracing, verdict } = now;
  if (verdict.verdict === 'named' && isNewPart(tracing, verdict)) return true;
  return planned >= 0 && isFoundOut(now, [...steps, ...held.map((one) => one.step)]);
}

/** With nothing planned, nothing done and nothing seen, something is looked at first. */
const orFirstLook = ({ tracing }: TracedSoFar, { steps }: Candidates, planned: number): number =>
  planned < 0 && tracing.log.length === 0 && tracing.seen.length === 0 ? firstLook(steps) : planned;

/** The first step owed that can be done now, or what opens the way to one; -1: none. */
function firstOwed({ steps, holding, owedFirst }: Candidates): number {
  const placeOf = (id: StepId) => steps.findIndex((step) => step.id === id);
  const can = owedFirst.map(placeOf).find((place) => place >= 0);
  const opener: Step | undefined = holding.find(({ step }) => owedFirst.includes(step.id))?.firstDo[0];
  return can ?? (opener ? steps.indexOf(opener) : -1);
}
