import { COULD_NOT } from './couldNot.ts';
import { circuitsOf, maskOf } from './model/circuits.ts';
import { knownStep } from './model/special.ts';
import type { Circuit, FaultModel, LoggedStep, Step, TracingCase } from './types.ts';

const HOME = maskOf(['home']);

/**
 * What is out of circuit while a step is looked at, in bits over CIRCUITS, and what stays out after it. `spent`: which of
 * the step's own handlings (see `handlingsOf`) were done before, in bits.
 */
export type Look = { readonly before: number; readonly look: number; readonly stays: number; readonly spent: number };

/** All that a step does, in order: what it is for, what it also does, what putting back does. */
export const handlingsOf = (step: Step): readonly string[] => [...step.does, ...step.alsoDoes, ...step.putBackDoes];

const stepOf = (model: FaultModel, entry: LoggedStep): Step | undefined => knownStep(model, entry.step);

/**
 * How a log leaves the machine, in bits over CIRCUITS: our cord and screen in their place for good, what the last step
 * left out, and the suspect: what the last step that made it work had taken out (null: none did). This goes back in.
 * `handled`: the handlings that were done.
 */
export type Left = {
  readonly forGood: number;
  readonly out: number;
  readonly suspect: number | null;
  readonly handled: ReadonlySet<string>;
};

/** Before the first step: only the owner's place is out. */
export const NOTHING_DONE: Left = { forGood: HOME, out: 0, suspect: null, handled: new Set() };

/** How the machine is left after one more entry of the log. */
export function leftBy(model: FaultModel, left: Left, entry: LoggedStep): Left {
  if (entry.struck) return left;
  const step = stepOf(model, entry);
  const out = maskOf(entry.leftOut);
  if (!step || entry.outcome === COULD_NOT) return { ...left, out };
  const handled = handledAfter(left.handled, step, entry);
  if (step.takesOut.length === 0) return { ...left, out, handled };
  const taken = maskOf(step.takesOut);
  const works = step.outcomes.some(({ id, meaning }) => id === entry.outcome && meaning.means === 'works');
  return {
    forGood: step.staysOut ? left.forGood | taken : left.forGood,
    out,
    suspect: works ? taken : left.suspect,
    handled,
  };
}

/** The handlings done once this step is: none where nobody knows what came of it. */
function handledAfter(handled: ReadonlySet<string>, step: Step, { outcome }: LoggedStep): ReadonlySet<string> {
  const did = handlingsOf(step);
  return step.outcomes.some(({ id }) => id === outcome) && did.some((id) => !handled.has(id))
    ? new Set([...handled, ...did])
    : handled;
}

/** How a whole log leaves the machine. */
export const leftAfter = (model: FaultModel, log: readonly LoggedStep[]): Left =>
  log.reduce((left, entry) => leftBy(model, left, entry), NOTHING_DONE);

/** The circuits out of the way when `step` is looked at after `log`: see `lookFrom`. */
export const lookMask = (model: FaultModel, log: readonly LoggedStep[], step: Step): Look =>
  lookFrom(leftAfter(model, log), step);

/**
 * The circuits out of the way when `step` is looked at. What was left out and is no longer out after the step
 * (`outAfter`) was back in for its look; of a step not done yet it is taken that the suspect which made it work goes back.
 */
export function lookFrom({ forGood, out, suspect, handled }: Left, step: Step, outAfter?: number): Look {
  const spent = handlingsOf(step).reduce((bits, id, at) => (handled.has(id) ? bits | (1 << at) : bits), 0);
  const before = forGood | (out & (outAfter ?? ~(suspect ?? 0)));
  if (step.onRig) return { before, look: ~maskOf(step.onRig), stays: before, spent };
  const back = step.kind === 'back' && step.confirming ? (suspect ?? 0) : 0;
  const bringsIn = maskOf(step.bringsIn) | back;
  return { before, look: (before | maskOf(step.takesOut)) & ~bringsIn, stays: before, spent };
}

/**
 * All circuits that are out after a step: what was out before it, with the step's own parts back or staying out.
 * `stay`: the bench left the part out (or ours in its place); by default what the step itself says, `asked` meaning back.
 */
export function leftOutAfter(
  model: FaultModel,
  tracing: Pick<TracingCase, 'log'>,
  step: Step,
  stay = false,
): readonly Circuit[] {
  const { out, suspect } = leftAfter(model, tracing.log);
  const left = out & ~(suspect ?? 0);
  const own = maskOf(step.takesOut);
  return circuitsOf(step.onRig ? left : stay ? left | own : left & ~own);
}
