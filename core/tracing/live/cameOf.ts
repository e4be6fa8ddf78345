import type { LoggedStep } from './case.ts';
import type { OutcomeId } from './ids.ts';
import type { LookPlace } from './model/step.ts';

/** All that came of a logged step: its outcome, and what else was found in the same look. */
export const cameOf = ({ outcome, also = [] }: Pick<LoggedStep, 'outcome' | 'also'>): readonly OutcomeId[] => [
  outcome,
  ...also,
];

/** Can all these be found in one look: each at one of its places, and none of them twice? */
export const areFoundTogether = (
  { places }: { readonly places: readonly LookPlace[] },
  outcomes: readonly OutcomeId[],
): boolean =>
  new Set(outcomes).size === outcomes.length &&
  outcomes.every((outcome) => places.some(({ findings }) => findings.includes(outcome)));
