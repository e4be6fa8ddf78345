import { knownStep } from '../../live/model/special.ts';
import type { FaultModel } from '../../live/types.ts';
import type { Either } from '../form/benchCase.ts';
import { outcomeNamed, outcomesNamed, stepNamed } from '../ids/names.ts';

/** How the log stands at some moment, and whether the machine was mended by then. */
export type Moment = { readonly log: readonly string[]; readonly mended: boolean };

/** A step's id as the model has it now; what the model lacks keeps its own. */
export const idNow = (model: FaultModel, id: string): string => {
  const named = stepNamed(model, id);
  return named.is === 'here' ? named.step.id : id;
};

/** Cases call it so whatever word the owner is asked for; the model has a step for each word. */
export const ASK_OWNER = 'ask-owner';

/** Does the model's step ask the owner for a word, to be answered yes, no or later? */
export const asksForAWord = (model: FaultModel, id: string): boolean =>
  knownStep(model, id)?.kind === 'ask' &&
  ['yes', 'no', 'later'].every((answer) => outcomeNamed(model, id, answer) !== null);

/** Is this the step that a case means? `what` as cases write it. */
export const isStep = (model: FaultModel, what: string, step: string): boolean =>
  idNow(model, what) === idNow(model, step) || (what === ASK_OWNER && asksForAWord(model, step));

/** Is "step", "step:outcome" or "mended" so at this moment? "ever" never is. */
export function holds(model: FaultModel, { log, mended }: Moment, what: string): boolean {
  if (what === 'ever') return false;
  if (what === 'mended') return mended;
  const [id = '', outcome] = what.split(':');
  const now = outcome === undefined ? null : outcomeNamed(model, id, outcome);
  return log.some((entry) => {
    const [done = '', came = ''] = entry.split(':');
    if (!isStep(model, id, done)) return false;
    return outcome === undefined || (now !== null && (outcomesNamed(model, done, came)?.includes(now) ?? false));
  });
}

/** One of these is enough; a list inside the list: all of it. */
export const oneHolds = (model: FaultModel, moment: Moment, either: Either): boolean =>
  either.some((one) => (typeof one === 'string' ? [one] : one).every((what) => holds(model, moment, what)));
