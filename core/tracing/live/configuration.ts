import { circuitsOf, maskOf } from './model/circuits.ts';
import type { Circuit, FaultModel, LoggedStep, Step, TracingCase } from './types.ts';

const HOME = maskOf(['home']);

/** What is out of circuit while a step is looked at, in bits over CIRCUITS, and what stays out after it. */
export type Look = { readonly before: number; readonly look: number; readonly stays: number };

const stepOf = (model: FaultModel, entry: LoggedStep): Step | undefined =>
  model.steps[model.stepIndex.get(entry.step) ?? -1];

/** What the log leaves out of circuit: our cord and screen in their place for good, and what the last step left out. */
function stays(model: FaultModel, log: readonly LoggedStep[]): { readonly forGood: number; readonly left: number } {
  let forGood = HOME;
  let left = 0;
  for (const entry of log) {
    if (entry.struck) continue;
    const step = stepOf(model, entry);
    if (step?.staysOut) forGood |= maskOf(step.takesOut);
    left = maskOf(entry.leftOut);
  }
  return { forGood, left };
}

/**
 * The circuits out of the way when `step` is looked at after `log`. What was left out and is no longer out after the step
 * (`leftAfter`) was back in for its look; of a step not done yet it is taken that the suspect which made it work goes back.
 */
export function lookMask(model: FaultModel, log: readonly LoggedStep[], step: Step, leftAfter?: number): Look {
  const { forGood, left } = stays(model, log);
  const before = forGood | (left & (leftAfter ?? keptOut(model, log)));
  if (step.onRig) return { before, look: ~maskOf(step.onRig), stays: before };
  const back = step.kind === 'back' && step.confirming ? suspectMask(model, log) : NO_SUSPECT;
  const bringsIn = maskOf(step.bringsIn) | (back === NO_SUSPECT ? 0 : back);
  return { before, look: (before | maskOf(step.takesOut)) & ~bringsIn, stays: before };
}

/** What stays out when the next step begins and nobody says otherwise: all but the suspect that made it work. */
function keptOut(model: FaultModel, log: readonly LoggedStep[]): number {
  const suspect = suspectMask(model, log);
  return suspect === NO_SUSPECT ? ~0 : ~suspect;
}

/** In place of the suspect's circuits where nothing taken out has made it work. */
const NO_SUSPECT = ~0;

/** What the last step that made it work had taken out, in bits over CIRCUITS: this is what goes back in. */
export function suspectMask(model: FaultModel, log: readonly LoggedStep[]): number {
  for (let at = log.length - 1; at >= 0; at--) {
    const entry = log[at];
    const step = entry && !entry.struck ? stepOf(model, entry) : undefined;
    const outcome = step?.outcomes.find((each) => each.id === entry?.outcome);
    if (step && outcome?.meaning.means === 'works' && step.takesOut.length > 0) return maskOf(step.takesOut);
  }
  return NO_SUSPECT;
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
  const left = stays(model, tracing.log).left & keptOut(model, tracing.log);
  const own = maskOf(step.takesOut);
  return circuitsOf(step.onRig ? left : stay ? left | own : left & ~own);
}
