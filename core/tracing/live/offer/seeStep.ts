import { assemblyOf, movesBefore } from '../assembly.ts';
import type { FaultModel, StateId, Step, StepView, Suspect, TracingCase } from '../types.ts';
import { loanerFor } from './available.ts';
import { byFault, faultsThere, greatest } from './faultsThere.ts';
import { type Reasoned, reasonsOf, TELLS } from './reasons.ts';
import { chancesToTellApart } from './sweep.ts';
import type { LiveProblem } from './toProblem.ts';
import { handsOnOf } from './weights.ts';

/** How many suspects are named after an outcome. */
const NAMED = 3;

/** Is the step the one on offer, and which held one does it open the way to? */
export type Wanted = Pick<Reasoned, 'offered' | 'firstFor'>;
const ASKED_ABOUT: Wanted = { offered: false, firstFor: null };

/** One step as the Bench shows it: minutes, moves, outcomes with what each would leave, cautions, and the facts behind it. */
export function seeStep(
  model: FaultModel,
  tracing: TracingCase,
  live: LiveProblem,
  at: number,
  open: readonly StateId[],
  suspects: readonly Suspect[],
  wanted: Wanted = ASKED_ABOUT,
): StepView {
  const step = live.steps[at] as Step;
  const planned = live.own[at];
  const watch = live.watches[at] ?? null;
  const { moves } = movesBefore(assemblyOf(model, tracing.switches), open, step);
  const there = faultsThere(live);
  const { prior } = live.problem;
  const now = byFault(there, prior);
  const apart = chancesToTellApart(model, step, suspects);
  const joint = new Float64Array(prior.length);
  const idOf = (at: number): string => model.faults[there.faults[at] as number]?.id ?? '';
  const outcomes = step.outcomes.map((outcome, o) => {
    const row = planned?.chance[o] as Float64Array;
    let p = 0;
    for (let w = 0; w < joint.length; w++) {
      joint[w] = (prior[w] as number) * (row[w] as number);
      p += joint[w] as number;
    }
    if (p > 0) for (let w = 0; w < joint.length; w++) joint[w] = (joint[w] as number) / p;
    const then = byFault(there, joint);
    p = apart?.[o] ?? p;
    return {
      view: {
        outcome: outcome.id,
        p,
        leaves: greatest(then, NAMED).map((at) => ({ fault: idOf(at), p: then[at] as number })),
        ends: (watch ? planned : live.problem.steps[at])?.cures[o] ?? false,
      },
      after: then,
    };
  });
  const moved = now.map((before, at) =>
    outcomes.reduce(
      (most, { view, after }) => Math.max(most, view.p > 0.001 ? Math.abs((after[at] as number) - before) : 0),
      0,
    ),
  );
  const risk = planned?.harm
    ? planned.harm.reduce((sum, minutes, w) => sum + minutes * (live.problem.prior[w] ?? 0), 0)
    : 0;
  const borrows = [step.handling.borrows, ...step.handling.alsoBorrows]
    .filter((kind) => kind !== null)
    .map((kind) => {
      const found = loanerFor(tracing, kind);
      return { kind, loaner: 'loaner' in found ? found.loaner.id : null };
    });
  return {
    step: step.id,
    handsOn: handsOnOf(model, tracing, step) + moves.reduce((sum, move) => sum + move.minutes, 0),
    waiting: step.waiting,
    moves,
    cost: (planned?.minutes ?? 0) + moves.reduce((sum, move) => sum + move.minutes, 0) + risk,
    risk,
    outcomes: outcomes.map(({ view }) => view),
    splits: greatest(moved, NAMED)
      .filter((at) => (moved[at] as number) > TELLS)
      .map(idOf),
    cautions: step.cautions,
    borrows,
    facts: reasonsOf({
      model,
      tracing,
      step,
      tells: Math.max(0, ...moved),
      nothingToOpen: moves.length === 0,
      risk,
      suspects,
      outcomes: outcomes.map(({ view, after }) => ({ ...view, moves: movedBy(now, after) })),
      watch,
      ...wanted,
    }),
  };
}

/** How far an outcome moves the chances of the faults: half the sum of what each gains or loses. */
const movedBy = (before: Float64Array, after: Float64Array): number =>
  before.reduce((sum, p, at) => sum + Math.abs((after[at] as number) - p), 0) / 2;
