import type { OutcomeId, StepId } from '../types.ts';

/** What a bench reading comes to for the belief: one outcome of one step; or none, and why. */
export type Finding =
  | { readonly finding: 'is'; readonly step: StepId; readonly outcome: OutcomeId }
  | { readonly finding: 'none'; readonly because: NoFinding };

export type NoFinding =
  /** Too little was measured to say "within". */
  | 'not-all-measured'
  /** Between the printed limit and the per cent behind it: a meter's last digit decides, so the bench does. */
  | 'at-the-edge'
  /** No limit is known for this rail in this edition, or editions that could be meant disagree. */
  | 'no-limit'
  | 'family-unknown'
  | 'phase-unknown'
  /** The code is the board maker's own, or only its phase is known. */
  | 'see-the-manual'
  | 'not-in-the-table'
  | 'not-a-code';

/** A reading that stands for this outcome of this step. */
export const found = (step: StepId, outcome: OutcomeId): Finding => ({ finding: 'is', step, outcome });
/** A reading that stands for none, and why. */
export const noFinding = (because: NoFinding): Finding => ({ finding: 'none', because });
