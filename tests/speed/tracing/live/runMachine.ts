import { assemblyOf, closingMinutes, movesBefore } from '../../../../core/tracing/live/assembly.ts';
import { openStates } from '../../../../core/tracing/live/offer/openStates.ts';
import type { EngineVerdict, FaultModel, Outcome, Step, TracingCase } from '../../../../core/tracing/live/types.ts';
import { isOutside } from '../../../../core/tracing/live/verdict/blame.ts';
import { afterDoing, WALL } from '../../../builders/tracingCase.ts';
import type { Policy } from './policies.ts';
import type { SimulatedMachine } from './simulatedMachine.ts';

/** Minutes charged when the tracing is handed over, and the longest a bench goes on. */
export const HANDED_OVER = 60;
const LONGEST = 240;

export type Run = {
  /** Hands-on minutes, opening and closing included, with the charge for handing over. */
  readonly minutes: number;
  readonly verdict: EngineVerdict['verdict'];
  /** The part blamed by the verdict, confirmed or named. */
  readonly blamed: string | null;
  /** The fault that the verdict found; null where it names none: handed over, or a sweep worked. */
  readonly found: string | null;
  /** The part that was named first, whether or not it was confirmed later. */
  readonly named: string | null;
  /** Said to be mended or to work now, and the fault is still in the machine; what stands outside it may be. */
  readonly saidMended: 'not' | 'rightly' | 'wrongly';
  /** Of ours, and of the owner's sound parts, hurt on the way. */
  readonly loanersHurt: number;
  readonly ownersHurt: number;
};

/** How a bench works: what it does while it traces, and once a part is named; what may be said after a history. */
export type Bench = {
  readonly policy: Policy;
  readonly confirm: Policy;
  readonly verdict: (tracing: TracingCase) => EngineVerdict;
};

/** Traces one machine by a policy; once a part is named, every policy confirms it as the engine offers. */
export function runMachine(
  model: FaultModel,
  start: TracingCase,
  machine: SimulatedMachine,
  bench: Bench,
  takes = (step: Step): number => step.handsOn,
): Run {
  let tracing = start;
  let minutes = 0;
  let named: string | null = null;
  for (;;) {
    const verdict = bench.verdict(tracing);
    if (verdict.verdict === 'named') named ??= verdict.part;
    const done = (charge: number): Run => ({
      minutes: minutes + charge + closingMinutes(assemblyOf(model, tracing.switches), openStates(model, tracing)),
      verdict: verdict.verdict,
      blamed: 'part' in verdict ? verdict.part : null,
      found: 'fault' in verdict ? verdict.fault : null,
      named,
      saidMended: verdict.verdict === 'cured' ? mendedAs(model, machine, verdict.by) : 'not',
      loanersHurt: machine.loanersHurt,
      ownersHurt: machine.ownersHurt,
    });
    if (verdict.verdict === 'confirmed' || verdict.verdict === 'cured' || verdict.verdict === 'not-reproduced')
      return done(0);
    const work = verdict.verdict === 'named' ? bench.confirm : bench.policy;
    const next = minutes < LONGEST ? work(tracing) : null;
    if (next === null) return done(verdict.verdict === 'named' ? 0 : HANDED_OVER);
    const step = model.steps[model.stepIndex.get(next) ?? -1];
    if (!step) throw new Error(next);
    const { moves } = movesBefore(assemblyOf(model, start.switches), openStates(model, tracing), step);
    minutes += moves.reduce((sum, move) => sum + move.minutes, takes(step));
    tracing = afterStep(model, tracing, step, machine.does(tracing, next));
  }
}

/** The case after a step with this outcome: ours goes in where it borrows one, and stays where all works with it. */
export const afterStep = (model: FaultModel, tracing: TracingCase, step: Step, outcome: Outcome): TracingCase =>
  afterDoing(model, tracing, step.id, outcome.id, {
    loaners: usedIn(model, step),
    stays: outcome.meaning.means === 'works' && step.takesOut.length > 0,
  });

/** Is it as was said? What stands outside the machine stays there, and ours stands in its place here. */
function mendedAs(
  model: FaultModel,
  machine: SimulatedMachine,
  by: Extract<EngineVerdict, { readonly verdict: 'cured' }>['by'],
): Run['saidMended'] {
  const part = model.faults[machine.fault]?.part ?? 'none';
  return !machine.stillThere || (by === 'outside' && isOutside(part)) ? 'rightly' : 'wrongly';
}

/** The shop part that a step puts into the machine, with its standing. */
function usedIn(model: FaultModel, step: Step) {
  const kinds = [step.handling.borrows, ...step.handling.alsoBorrows];
  return WALL.filter((one) => kinds.includes(one.kind) && model.badLoaner[one.kind])
    .slice(0, 1)
    .map(({ id, kind, standing }) => ({ id, kind, standing }));
}
