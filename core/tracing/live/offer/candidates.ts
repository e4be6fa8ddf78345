import { nth } from '../../../figures/rows.ts';
import { assemblyOf, opensOf } from '../assembly.ts';
import { whyNot } from '../gates/available.ts';
import { owedNow, owedSteps } from '../gates/owed.ts';
import { askFor } from '../gates/ownersWords.ts';
import { type HeldStep, type LiveProblem, toProblem } from '../problem/toProblem.ts';
import type { Fault, Method, NotOffered, Owed, Step, StepId } from '../types.ts';
import { faultOf } from '../verdict/blame.ts';
import { leftAlone } from '../verdict/letRun.ts';
import { chancesOfSubjects, WORTH_ASKING, WORTH_DAYS } from './about.ts';
import { heldSteps } from './heldSteps.ts';
import { settlingSteps } from './settling.ts';
import { namedPart, type TracedSoFar } from './tracedSoFar.ts';

/** The steps that an offer is chosen from, and all that keeps the others from it. */
export type Candidates = {
  /** Chance of what a step is about, 0..1. */
  readonly chanceOfSubject: (step: Step) => number;
  readonly notOffered: readonly NotOffered[];
  /** Asks the owner for more than the limit agreed; null where there is none, or they were asked. */
  readonly asksForMore: Step | null;
  /** What safety asks for before a verdict may end it, such as the copy of a failing drive; and the steps that do it. */
  readonly owes: readonly Owed[];
  readonly owedFirst: readonly StepId[];
  /** All that can be done and is about something suspected, and all held back whose opening can be done. */
  readonly ready: readonly Step[];
  readonly holding: readonly HeldStep[];
  /** Of these, once a part is named, only what can settle it: as a problem, its steps that can be done, and those held. */
  readonly live: LiveProblem;
  readonly steps: readonly Step[];
  readonly held: readonly HeldStep[];
};

/** What can be done next; the rule of thumb (`easiest`) does not plan with what is held back. */
export function candidatesOf(now: TracedSoFar, method: Method): Candidates {
  const { model, tracing, posterior, suspects } = now;
  const whyNotNow = whyNot(model, tracing, suspects);
  const notOffered: NotOffered[] = [];
  const can: Step[] = [];
  for (const step of model.steps) {
    const why = whyNotNow(step);
    if (why) notOffered.push({ step: step.id, why });
    else if (step.kind !== 'recheck') can.push(step);
  }
  const chanceOfSubject = chancesOfSubjects(model, suspects);
  const owes = owedNow(model, tracing, suspects, whyNotNow);
  const owedFirst = owedSteps(owes);
  const asks = (step: Step) => chanceOfSubject(step) >= WORTH_ASKING || owedFirst.includes(step.id);
  // What takes days is not even asked for below its own chance.
  const wants = (step: Step) => asks(step) && (!takesDays(step) || chanceOfSubject(step) >= WORTH_DAYS);
  const holding =
    method === 'easiest' ? [] : heldSteps(model, tracing, notOffered, can).filter((one) => wants(one.step));
  const alone = leftAlone(model, tracing, suspects);
  const opens = (step: Step) => holding.some((one) => one.firstDo.includes(step));
  const ready = can.filter((step) => !alone(step) && (asks(step) || opens(step)));
  const all = toProblem(model, tracing, posterior, { steps: ready, held: holding });
  const part = namedPart(now);
  const left =
    part === null ? { live: all, steps: ready, held: holding } : settlingOnly(now, all, part, { ready, holding });
  const asksForMore = askFor(can, 'limit') ?? null;
  return { chanceOfSubject, notOffered, asksForMore, owes, owedFirst, ready, holding, ...left };
}

/** A part ordered to try, or theirs sent out: by the owner's own word. */
export const takesDays = ({ kind }: Step): boolean => kind === 'order' || kind === 'send';

/** Once a part is named: only what can confirm or clear it at less than the mend, and what opens the way there. */
function settlingOnly(
  now: TracedSoFar,
  all: LiveProblem,
  part: Fault['part'],
  { ready, holding }: Pick<Candidates, 'ready' | 'holding'>,
): Pick<Candidates, 'live' | 'steps' | 'held'> {
  const settling = settlingSteps(now.model, all, part).filter((step) => !takesBoardOut(now, step));
  const held = holding.filter((one) => settling.includes(one.step));
  const steps = ready.filter((step) => settling.includes(step) || held.some((one) => one.firstDo.includes(step)));
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

const BOARD = 'board';

/**
 * A board comes out for the mend itself, or with the owner's word: once a part is named, taking it out only to be surer costs
 * as much as a new one in its place, which shows the same; what is put right by seating it anew comes out for that. Common
 * practice, no source.
 */
const takesBoardOut = ({ model, tracing, open, verdict }: TracedSoFar, step: Step): boolean =>
  opensOf(assemblyOf(model, tracing.switches), step).includes(BOARD) &&
  !open.includes(BOARD) &&
  !(verdict.verdict === 'named' && faultOf(model, verdict.fault).mendedBy === 'reseating');
