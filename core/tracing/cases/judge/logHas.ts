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

/** Is "step", "step:outcome" or "mended" so at this moment? "ever" never is. */
export function holds(model: FaultModel, { log, mended }: Moment, what: string): boolean {
  if (what === 'ever') return false;
  if (what === 'mended') return mended;
  const [id = '', outcome] = what.split(':');
  const step = idNow(model, id);
  const now = outcome === undefined ? null : outcomeNamed(model, id, outcome);
  return log.some((entry) => {
    const [done = '', came = ''] = entry.split(':');
    if (idNow(model, done) !== step) return false;
    return outcome === undefined || (now !== null && (outcomesNamed(model, done, came)?.includes(now) ?? false));
  });
}

/** One of these is enough; a list inside the list: all of it. */
export const oneHolds = (model: FaultModel, moment: Moment, either: Either): boolean =>
  either.some((one) => (typeof one === 'string' ? [one] : one).every((what) => holds(model, moment, what)));
