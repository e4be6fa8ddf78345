import { nth } from '../../../figures/rows.ts';
import type { Cancel } from '../../plan/effort.ts';
import type { Ranking } from '../../plan/rank.ts';
import { assemblyOf, opensOf } from '../assembly.ts';
import { suspectsOf } from '../belief/belief.ts';
import { type Posterior, posteriorOf } from '../belief/posterior.ts';
import { stepOf } from '../model/special.ts';
import type {
  Fault,
  FaultModel,
  Method,
  NotOffered,
  Offer,
  Proposal,
  Step,
  StopAnswer,
  Suspect,
  TracingCase,
  Verdict,
} from '../types.ts';
import { chancesOfSubjects, WORTH_ASKING, WORTH_DAYS } from './about.ts';
import { whyNot } from './available.ts';
import { moreMayBeWrong } from './elseWrong.ts';
import { firstLook, firstMoves } from './firstMoves.ts';
import { regardless } from './handOver.ts';
import { heldSteps } from './heldSteps.ts';
import { isFoundOut, isNewPart, lastWord, wasDeclined } from './lastWord.ts';
import { leftAlone } from './letRun.ts';
import { neverFailedHere } from './neverFailedHere.ts';
import { openStates } from './openStates.ts';
import { owedNow, owedSteps } from './owed.ts';
import { seenToFailFirst } from './provoke.ts';
import { minutesOf, rankSteps } from './ranking.ts';
import { sceneOf, seeStep, type Wanted } from './seeStep.ts';
import { settlingSteps } from './settling.ts';
import { type HeldStep, type LiveProblem, toProblem } from './toProblem.ts';
import { verdictAfter } from './verdictAfter.ts';
import { ownMinutes } from './weights.ts';

/** Steps shown beside the one on offer. */
const MOST_OTHERS = 12;

const BOARD = 'board';

/** Verdicts that end the tracing. */
const SETTLED: readonly Verdict['verdict'][] = ['confirmed', 'cured', 'not-reproduced'];

/** `pairs`: two faults at once are planned for too, by default in all but the answer that must come at once. */
type OfferHow = { readonly method: Method; readonly pairs?: boolean; readonly cancel?: Cancel };

/**
 * The next step: the one with the fewest expected minutes from here, its reasons, what else could be done, what could
 * not and why. A settled verdict or a job not worth going on is answered instead of a step. `cancel` is looked at between
 * the candidates; raised, it throws `Halt`, for nobody waits for the answer any more.
 */
export function offerStep(
  model: FaultModel,
  tracing: TracingCase,
  { method, pairs = method !== 'ratio', cancel }: OfferHow,
): Offer {
  const posterior = posteriorOf(model, tracing, pairs);
  const suspects = suspectsOf(model, posterior);
  const open = openStates(model, tracing);
  // What would end the tracing is said only with pairs of faults counted in, as it is where it is written down.
  const said = verdictAfter(model, tracing, posterior);
  const verdict = !pairs && SETTLED.includes(said.verdict) ? verdictAfter(model, tracing) : said;
  const named = verdict.verdict === 'named' ? verdict : null;
  const notOffered: NotOffered[] = [];
  const can: Step[] = [];
  const whyNotNow = whyNot(model, tracing, suspects);
  for (const step of model.steps) {
    const why = whyNotNow(step);
    if (why) notOffered.push({ step: step.id, why });
    else if (step.kind !== 'recheck') can.push(step);
  }
  const chanceOfSubject = chancesOfSubjects(model, suspects);
  // What safety asks for before a verdict may end it, such as the copy of a failing drive.
  const owes = owedNow(model, tracing, suspects, whyNotNow);
  const owedFirst = owedSteps(owes);
  const asks = (step: Step) => chanceOfSubject(step) >= WORTH_ASKING || owedFirst.includes(step.id);
  const holding =
    method === 'easiest' ? [] : heldSteps(model, tracing, notOffered, can).filter((one) => asks(one.step));
  const alone = leftAlone(model, tracing, suspects);
  const ready = can.filter((step) => !alone(step) && (asks(step) || holding.some((one) => one.firstDo.includes(step))));
  const all = toProblem(model, tracing, posterior, ready, holding);
  const { live, steps, held } = named
    ? onlySettling(model, tracing, all, named.part, ready, holding)
    : { live: all, steps: ready, held: holding };
  const ranking = rankSteps(model, live, open, { method, cancel });
  const scene = sceneOf({ model, tracing, live, open, suspects });
  const see = (place: number, wanted?: Wanted) => seeStep(scene, place, wanted);
  const wanted = method === 'easiest' ? ranking.easiest : method === 'ratio' ? ranking.ratio : ranking.best;
  // What is held back is worth its opening steps: the first of them is the one to do now.
  const opener = held[wanted - steps.length]?.firstDo[0];
  const planned = opener ? steps.indexOf(opener) : wanted;
  const paidFor = () => toProblem(model, tracing, posterior, ready, holding, regardless(live.handOver));
  const ended = SETTLED.includes(verdict.verdict);
  // A part is found: but is the machine whole with a new one? Ours in its place may show it.
  const settled =
    ended &&
    owes.length === 0 &&
    !(verdict.verdict === 'confirmed' && verdict.way !== 'both-ways' && moreMayBeWrong(model, posterior, verdict.part));
  const planOrTrial =
    planned < 0 && !named && live.handOver.by !== 'worth' ? seenToFailFirst(model, tracing, live, held) : planned;
  // Found out already, and nothing that can be done would mend it: no loaner tells more. But something is looked at first.
  const known =
    planOrTrial >= 0 && isFoundOut({ model, tracing, posterior, suspects }, [...steps, ...held.map((one) => one.step)]);
  const enough = named !== null && isNewPart(tracing, named);
  const untouched = planOrTrial < 0 && tracing.log.length === 0 && tracing.seen.length === 0;
  const planOrKnown = known || enough ? -1 : untouched ? firstLook(steps) : planOrTrial;
  const mayEnd = owes.length > 0 && (ended || planOrKnown < 0);
  const planOrOwed = mayEnd ? firstOwed(steps, holding, owedFirst) : planOrKnown;
  const chosen =
    method === 'easiest'
      ? planOrOwed
      : firstMoves({ model, tracing, steps, suspects, open }, planOrOwed, held[wanted - steps.length]?.step);
  const firstFor = opener && chosen === planned ? (held[wanted - steps.length]?.step.id ?? null) : null;
  const next = settled || chosen < 0 ? null : see(chosen, { offered: true, firstFor });
  const left = named !== null && chosen < 0;
  const ends = settled || left || (chosen < 0 && ended);
  const handed = () =>
    handedOver(
      live,
      ranking,
      steps.length === 0 ? null : rankSteps(model, paidFor(), open, { method: 'ratio', cancel }),
    );
  const stop: Offer['stop'] = next
    ? null
    : owes.length > 0
      ? { stop: 'owed', verdict, owed: owes }
      : ends
        ? { stop: 'settled', verdict }
        : stopped(model, tracing, { posterior, suspects, notOffered, handed: handed() });
  return {
    method,
    interim: method !== 'rollout',
    next,
    stop,
    expectedMinutes: ranking.expectedMinutes,
    easiest: { step: steps[ranking.easiest]?.id ?? null, expectedMinutes: minutesOf(ranking, ranking.easiest) },
    saved: Math.max(0, ranking.savedAgainstEasiest),
    others: ranking.steps
      .filter((one) => one.step !== chosen && one.step < steps.length)
      .slice(0, MOST_OTHERS)
      .map((one) => see(one.step)),
    notOffered,
    proposals: proposalsOf(model, tracing, notOffered, chanceOfSubject),
    openStates: open,
  };
}

/** The first step owed that can be done now, or what opens the way to one; -1: none. */
function firstOwed(steps: readonly Step[], holding: readonly HeldStep[], owed: readonly string[]): number {
  const can = owed.map((id) => steps.findIndex((step) => step.id === id)).find((at) => at >= 0);
  const opener = holding.find(({ step }) => owed.includes(step.id))?.firstDo[0];
  return can ?? (opener ? steps.indexOf(opener) : -1);
}

/** Why no step is worth doing: none would tell anything even if it were paid for (`paid`), or money ends it. */
const handedOver = (
  { handOver }: LiveProblem,
  { stopping }: Ranking,
  paid: Ranking | null,
): Extract<StopAnswer, { readonly stop: 'hand-over' }> => ({
  stop: 'hand-over',
  expectedMinutes: paid?.steps[0]?.expectedMinutes ?? stopping,
  handOverMinutes: handOver.minutes,
  because: paid === null || paid.best < 0 ? 'no-step-left' : `dearer-than-${handOver.by}`,
});

/** Nothing is left to do, or to be paid for: what can be said all the same, else why it is handed over. */
function stopped(
  model: FaultModel,
  tracing: TracingCase,
  now: {
    readonly posterior: Posterior;
    readonly suspects: readonly Suspect[];
    readonly notOffered: readonly NotOffered[];
    readonly handed: Extract<StopAnswer, { readonly stop: 'hand-over' }>;
  },
): StopAnswer {
  const { posterior, suspects, notOffered, handed } = now;
  // Never seen to fail here, and nothing is left that is likely to make it: that is what can be said, not more.
  const verdict = neverFailedHere(model, tracing, suspects) ?? lastWord({ model, tracing, posterior, suspects });
  if (verdict) return { stop: 'settled', verdict };
  const declined = handed.because === 'no-step-left' && wasDeclined(model, tracing, notOffered);
  return declined ? { ...handed, because: 'declined' } : handed;
}

/** What takes days and lacks only the owner's word for it, where it is about something suspected. */
function proposalsOf(
  model: FaultModel,
  tracing: TracingCase,
  notOffered: readonly NotOffered[],
  chanceOfSubject: (step: Step) => number,
): readonly Proposal[] {
  return notOffered.flatMap(({ step: id, why }) => {
    const step = stepOf(model, id);
    if (why.is !== 'word' || (step.kind !== 'order' && step.kind !== 'send')) return [];
    if (chanceOfSubject(step) < WORTH_DAYS) return [];
    const { handsOn, waiting } = step;
    return [{ step: id, need: why.need, handsOn, waiting, cost: ownMinutes(model, tracing, step) }];
  });
}

/** Once a part is named: only what can confirm or clear it at less than the mend, and what opens the way there. */
function onlySettling(
  model: FaultModel,
  tracing: TracingCase,
  all: LiveProblem,
  part: Fault['part'],
  open: readonly Step[],
  holding: readonly HeldStep[],
): { readonly live: LiveProblem; readonly steps: readonly Step[]; readonly held: readonly HeldStep[] } {
  const settling = settlingSteps(model, all, part).filter((step) => !takesBoardOut(model, tracing, step));
  const held = holding.filter((one) => settling.includes(one.step));
  const steps = open.filter((step) => settling.includes(step) || held.some((one) => one.firstDo.includes(step)));
  const chosen = new Set([...steps, ...held.map((one) => one.step)]);
  const only = <T>(list: readonly T[]): readonly T[] => list.filter((_, s) => chosen.has(nth(all.steps, s)));
  return {
    live: {
      ...all,
      steps: only(all.steps),
      own: only(all.own),
      watches: only(all.watches),
      problem: { ...all.problem, steps: only(all.problem.steps) },
    },
    steps,
    held,
  };
}

/**
 * A board comes out for the mend itself, or with the owner's word: once a part is named, taking it out only to be surer costs
 * as much as a new one in its place, which shows the same. Common practice, no source.
 */
const takesBoardOut = (model: FaultModel, tracing: TracingCase, step: Step): boolean =>
  opensOf(assemblyOf(model, tracing.switches), step).includes(BOARD) && !openStates(model, tracing).includes(BOARD);
