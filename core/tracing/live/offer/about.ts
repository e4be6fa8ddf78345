import { maskOf } from '../model/circuits.ts';
import type { FaultModel, Step, Suspect } from '../types.ts';

/** A step is not offered while all that it is about is less likely than this together. */
export const WORTH_ASKING = 0.01;

/** Trials of the whole machine, and looks at what it shows, are about everything. */
const aboutAll = (model: FaultModel, step: Step): boolean =>
  step.kind === 'load' || step.kind === 'back' || model.byGroup[model.stepIndex.get(step.id) ?? -1] !== null;

/**
 * Chance of what a step is about: faults whose finding it states, that it may mend, that it takes out of circuit or puts
 * in the rig. A step about nothing that is suspected shows no more than that the machine was switched on once more.
 */
export function chanceOfSubject(model: FaultModel, step: Step, suspects: readonly Suspect[]): number {
  if (aboutAll(model, step)) return 1;
  const s = model.stepIndex.get(step.id) ?? -1;
  const touched = maskOf(step.takesOut) | maskOf(step.onRig ?? []);
  return suspects.reduce((sum, { fault, p }) => {
    const f = model.faultIndex.get(fault) ?? -1;
    const about =
      model.listed[s]?.[f] === 1 || (step.mends[fault] ?? 0) > 0 || ((model.faultMask[f] as number) & touched) !== 0;
    return about ? sum + p : sum;
  }, 0);
}
