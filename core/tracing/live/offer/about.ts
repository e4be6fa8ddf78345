import { nth, wholeAt } from '../../../figures/rows.ts';
import type { Kept } from '../memory.ts';
import { maskOf } from '../model/circuits.ts';
import { faultNumber, stepNumber } from '../model/special.ts';
import type { FaultModel, Step, Suspect } from '../types.ts';

/** A step is not offered while all that it is about is less likely than this together. Common practice, no source. */
export const WORTH_ASKING = 0.01;
/** What takes days is not proposed below this. Common practice, no source. */
export const WORTH_DAYS = 0.2;

/** Trials of the whole machine, the suspect back in, looks at what it shows, and which part was added, are about everything. */
const aboutAll = (model: FaultModel, step: Step): boolean =>
  step.kind === 'load' ||
  step.asks.includes('part-unknown') ||
  (step.kind === 'back' && step.confirming) ||
  model.byGroup[stepNumber(model, step.id)] !== null;

/** Per step of the model, once asked about: 1 for each fault that it is about; null where that is all of them. */
const SUBJECTS: Kept<Map<number, Uint8Array | null>> = { begin: () => new Map() };

function subjectsOf(model: FaultModel, s: number): Uint8Array | null {
  const known = model.memory.of(model, SUBJECTS);
  const step = nth(model.steps, s);
  const subject = known.get(s) ?? (aboutAll(model, step) ? null : subjectOf(model, step, s));
  known.set(s, subject);
  return subject;
}

function subjectOf(model: FaultModel, step: Step, s: number): Uint8Array {
  const touched = maskOf(step.takesOut) | maskOf(step.onRig ?? []);
  const listed = nth(model.listed, s);
  const subject = new Uint8Array(model.faults.length);
  for (let f = 0; f < subject.length; f++)
    if (listed[f] === 1 || (wholeAt(model.faultMask, f) & touched) !== 0) subject[f] = 1;
  for (const [id, chance] of Object.entries(step.mends)) if (chance > 0) subject[faultNumber(model, id)] = 1;
  return subject;
}

/**
 * Chance of what a step is about: faults whose finding it states, that it may mend, that it takes out of circuit or puts
 * in the rig. A step about nothing that is suspected shows no more than that the machine was switched on once more.
 */
export function chancesOfSubjects(model: FaultModel, suspects: readonly Suspect[]): (step: Step) => number {
  const faults = suspects.map(({ fault, p }) => ({ f: faultNumber(model, fault), p }));
  return (step) => {
    const about = subjectsOf(model, stepNumber(model, step.id));
    return about ? faults.reduce((sum, { f, p }) => (about[f] === 1 ? sum + p : sum), 0) : 1;
  };
}
