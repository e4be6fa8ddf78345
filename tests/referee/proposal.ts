import type { Breach } from './breach.ts';
import { breaches } from './judge.ts';
import type { RefereeState } from './state.ts';
import { canBeRiskless, cautionsDue } from './wordsDue.ts';

/** A step as it is put to the technician: with letters of cautions and the ids of the reasons. */
export type Proposal = {
  readonly step: string;
  readonly cautions: readonly string[];
  readonly reasons: readonly string[];
};

/** Something said that is not so, or not said that is due. It hurts nobody by itself. */
export type Unsaid = Omit<Breach, 'harm'> & { readonly harm: 'said' };

/** All that is wrong with proposing a step now: what it would hurt, and what is said or left unsaid at it. */
export function wrongWithProposing(
  state: RefereeState,
  { step, cautions, reasons }: Proposal,
): readonly (Breach | Unsaid)[] {
  const lacking = cautionsDue(step).filter((letter) => !cautions.includes(letter));
  const said = (rule: string, says: string): Unsaid => ({ rule, says, harm: 'said' });
  return [
    ...breaches(state, step),
    ...lacking.map((letter) => said(`caution-${letter}`, `What is done in this step asks for the caution ${letter}.`)),
    ...(reasons.includes('nothing-at-risk') && !canBeRiskless(state, step)
      ? [
          said(
            'nothing-at-risk',
            'Hands go in, it is written to, or it is switched on for the first time: something is put at risk.',
          ),
        ]
      : []),
    ...(reasons.includes('tells-nothing')
      ? [said('tells-nothing', 'A step is not proposed with the reason that it tells hardly anything.')]
      : []),
  ];
}
