import { assemblyOf, movesBefore } from '../../../../core/tracing/live/assembly.ts';
import { openStates } from '../../../../core/tracing/live/offer/offerStep.ts';
import { verdictAfter } from '../../../../core/tracing/live/offer/verdictAfter.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import { afterDoing, WALL } from '../../../builders/tracingCase.ts';
import type { Policy } from './policies.ts';
import type { SimulatedMachine } from './simulatedMachine.ts';

/** Minutes charged when the tracing is handed over, and the longest a bench goes on. */
const HANDED_OVER = 60;
const LONGEST = 240;

export type Run = {
  /** Hands-on minutes, opening and closing included, with the charge for handing over. */
  readonly minutes: number;
  readonly verdict: string;
  /** The part blamed by the verdict, confirmed or named. */
  readonly blamed: string | null;
  /** The part that was named first, whether or not it was confirmed later. */
  readonly named: string | null;
  readonly hurt: number;
};

/** Traces one machine by a policy; once a part is named, every policy confirms it as the engine offers. */
export function runMachine(
  model: FaultModel,
  start: TracingCase,
  machine: SimulatedMachine,
  policy: Policy,
  confirm: Policy,
): Run {
  let tracing = start;
  let minutes = 0;
  let named: string | null = null;
  for (;;) {
    const verdict = verdictAfter(model, tracing);
    if (verdict.verdict === 'named') named ??= verdict.part;
    const done = (charge: number): Run => ({
      minutes: minutes + charge + closing(model, tracing),
      verdict: verdict.verdict,
      blamed: 'part' in verdict ? verdict.part : null,
      named,
      hurt: machine.hurt,
    });
    if (verdict.verdict === 'confirmed' || verdict.verdict === 'cured' || verdict.verdict === 'not-reproduced')
      return done(0);
    const next = minutes < LONGEST ? (verdict.verdict === 'named' ? confirm(tracing) : policy(tracing)) : null;
    if (next === null) return done(verdict.verdict === 'named' ? 0 : HANDED_OVER);
    const step = model.steps[model.stepIndex.get(next) ?? -1];
    if (!step) throw new Error(next);
    minutes +=
      step.handsOn +
      movesBefore(assemblyOf(model, start.switches), openStates(model, tracing), step).moves.reduce(
        (sum, move) => sum + move.minutes,
        0,
      );
    const outcome = machine.does(tracing, next);
    const kinds = [step.handling.borrows, ...step.handling.alsoBorrows];
    const loaners = WALL.filter((one) => kinds.includes(one.kind) && model.badLoaner[one.kind]).slice(0, 1);
    tracing = afterDoing(model, tracing, next, outcome.id, {
      loaners: loaners.map(({ id, kind, standing }) => ({ id, kind, standing })),
      stays: outcome.meaning.means === 'works' && step.takesOut.length > 0,
    });
  }
}

function closing(model: FaultModel, tracing: TracingCase): number {
  const assembly = assemblyOf(model, tracing.switches);
  return openStates(model, tracing).reduce(
    (sum, id) => sum + (assembly.states.find((state) => state.id === id)?.closing ?? 0),
    0,
  );
}
