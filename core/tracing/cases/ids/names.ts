import { areFoundTogether } from '../../live/cameOf.ts';
import { COULD_NOT } from '../../live/couldNot.ts';
import { knownStep } from '../../live/model/special.ts';
import { ALIASES, currentOutcome, currentStep } from '../../live/renamed/aliases.ts';
import type { FaultModel, Step } from '../../live/types.ts';
import { STEPS_TO_COME } from './stepsToCome.ts';

/** What the cases call a step: a step of the model, one that the model has not got yet, or nothing that anybody knows. */
export type NamedStep =
  | { readonly is: 'here'; readonly step: Step }
  | { readonly is: 'to-come'; readonly id: string }
  | { readonly is: 'unknown'; readonly id: string };

/** The model's step of an id as cases, protocols and journals write it. */
export function stepNamed(model: FaultModel, id: string): NamedStep {
  const step = knownStep(model, currentStep(id));
  if (step) return { is: 'here', step };
  return STEPS_TO_COME[id] ? { is: 'to-come', id } : { is: 'unknown', id };
}

/** An outcome of a step by the ids that cases write; null when the step knows none such. */
export function outcomeNamed(model: FaultModel, step: string, outcome: string): string | null {
  const named = stepNamed(model, step);
  if (named.is !== 'here') return STEPS_TO_COME[step]?.includes(outcome) ? outcome : null;
  const now = currentOutcome(step, outcome);
  return now === COULD_NOT || named.step.outcomes.some(({ id }) => id === now) ? now : null;
}

/** What several findings of one look are joined by: "look-inside:wet+plug-off". */
const AND = '+';

/**
 * All that came of a step by the ids that cases write, several findings of one look joined by "+"; null where the step
 * knows one of them not, or cannot have several at once.
 */
export function outcomesNamed(model: FaultModel, step: string, written: string): readonly string[] | null {
  const came = written.split(AND).map((one) => outcomeNamed(model, step, one));
  const known = came.filter((one) => one !== null);
  if (known.length < came.length) return null;
  if (known.length === 1) return known;
  const named = stepNamed(model, step);
  return named.is === 'here' && areFoundTogether(named.step, known) ? known : null;
}

/** All ids of steps that a case may write. */
export const stepIds = (model: FaultModel): readonly string[] => [
  ...model.steps.map(({ id }) => id),
  ...Object.keys(STEPS_TO_COME),
  ...Object.keys(ALIASES.steps),
];
