import { at, nth, productInto } from '../../../figures/rows.ts';
import { assemblyOf, movesBefore } from '../assembly.ts';
import { loanerFor } from '../gates/available.ts';
import { cautionsAt } from '../gates/cautionsAt.ts';
import { byFault, type FaultsThere, faultsThere, greatest } from '../problem/faultsThere.ts';
import type { LiveProblem } from '../problem/toProblem.ts';
import { handsOnOf } from '../problem/weights.ts';
import type { FaultModel, StateId, Step, StepView, Suspect, TracingCase } from '../types.ts';
import { chancesToTellApart } from '../verdict/sweep.ts';
import { type Reasoned, reasonsOf, TELLS } from './reasons.ts';

/** How many suspects are named after an outcome: what one line holds. */
const NAMED = 3;
/** An outcome rarer than this is a freak: how far it would move a suspect does not count. Common practice, no source. */
const FREAK = 0.001;

/** What every step of one offer is seen from. */
export type Scene = {
  readonly model: FaultModel;
  readonly tracing: TracingCase;
  readonly live: LiveProblem;
  readonly open: readonly StateId[];
  readonly suspects: readonly Suspect[];
  /** The faults that some hypothesis still has there, and the chance of each now. */
  readonly there: FaultsThere;
  readonly now: Float64Array;
};

/** Lays out once what all steps of an offer share. */
export function sceneOf(of: Omit<Scene, 'there' | 'now'>): Scene {
  const there = faultsThere(of.live);
  return { ...of, there, now: byFault(there, of.live.problem.prior) };
}

/** Is the step the one on offer, and which held one does it open the way to? */
export type Wanted = Pick<Reasoned, 'offered' | 'firstFor'>;
const ASKED_ABOUT: Wanted = { offered: false, firstFor: null };

/**
 * One step as the Bench shows it: minutes, moves, outcomes with what each would leave, cautions, and the facts behind it.
 * `place`: where it stands in the scene's steps.
 * @throws {RangeError} for a place without a step: a defect.
 */
export function seeStep(scene: Scene, place: number, wanted: Wanted = ASKED_ABOUT): StepView {
  const { model, tracing, live, open, suspects, now } = scene;
  const step = nth(live.steps, place);
  const own = nth(live.own, place);
  const watch = live.watches[place] ?? null;
  const { moves } = movesBefore(assemblyOf(model, tracing.switches), open, step);
  const moving = moves.reduce((sum, { minutes }) => sum + minutes, 0);
  const outcomes = outcomesOf(scene, place);
  const moved = now.map((before, f) =>
    outcomes.reduce((most, { p, after }) => (p > FREAK ? Math.max(most, Math.abs(at(after, f) - before)) : most), 0),
  );
  const risk = own.harm ? own.harm.reduce((sum, minutes, w) => sum + minutes * at(live.problem.prior, w), 0) : 0;
  return {
    step: step.id,
    handsOn: handsOnOf(model, tracing, step) + moving,
    waiting: step.waiting,
    moves,
    cost: own.minutes + moving + risk,
    risk,
    outcomes: outcomes.map(({ outcome, p, leaves, ends }) => ({ outcome, p, leaves, ends })),
    splits: greatest(moved, NAMED)
      .filter((f) => at(moved, f) > TELLS)
      .map((f) => idOf(scene, f)),
    cautions: cautionsAt(model, tracing, step),
    borrows: borrowedFor(tracing, step),
    facts: reasonsOf({
      model,
      tracing,
      step,
      tells: Math.max(0, ...moved),
      nothingToOpen: moves.length === 0,
      risk,
      suspects,
      outcomes: outcomes.map((one) => ({ ...one, moves: movedBy(now, one.after) })),
      watch,
      ...wanted,
    }),
  };
}

/** An outcome as it is shown, with the chance of each fault after it. */
type Foreseen = StepView['outcomes'][number] & { readonly after: Float64Array };

/** P(outcome) by the belief now, and what each would leave: P(fault | outcome) = P(fault, outcome) ÷ P(outcome). */
function outcomesOf(scene: Scene, place: number): readonly Foreseen[] {
  const { model, live, suspects, there } = scene;
  const { prior } = live.problem;
  const step = nth(live.steps, place);
  const own = nth(live.own, place);
  const { cures } = live.watches[place] ? own : nth(live.problem.steps, place);
  const apart = chancesToTellApart(model, step, suspects);
  const joint = new Float64Array(prior.length);
  return step.outcomes.map((outcome, o) => {
    const p = productInto(joint, prior, nth(own.chance, o));
    const after = byFault(there, p > 0 ? joint.map((share) => share / p) : joint);
    return {
      outcome: outcome.id,
      p: apart?.[o] ?? p,
      leaves: greatest(after, NAMED).map((f) => ({ fault: idOf(scene, f), p: at(after, f) })),
      ends: cures[o] ?? false,
      after,
    };
  });
}

const idOf = ({ model, there }: Scene, f: number): string => nth(model.faults, nth(there.faults, f)).id;

/** The things of ours that the step takes, and the very one that would be taken; null where there is none. */
const borrowedFor = (tracing: TracingCase, { handling }: Step): StepView['borrows'] =>
  [handling.borrows, ...handling.alsoBorrows]
    .filter((kind) => kind !== null)
    .map((kind) => {
      const found = loanerFor(tracing, kind);
      return { kind, loaner: 'loaner' in found ? found.loaner.id : null };
    });

/** How far an outcome moves the chances of the faults: half the sum of what each gains or loses. */
const movedBy = (before: Float64Array, after: Float64Array): number =>
  before.reduce((sum, p, f) => sum + Math.abs(at(after, f) - p), 0) / 2;
