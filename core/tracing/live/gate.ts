import type { FaultId, GateId, OutcomeId, StepId } from './ids.ts';
import type { LoanerStanding } from './loanerStanding.ts';
import type { Circuit } from './model/circuits.ts';

/** A step logged with one of these outcomes. */
export type Came = { readonly step: StepId; readonly outcomes: readonly OutcomeId[] };

export type Gate = {
  readonly id: GateId;
  /** Steps held back. */
  readonly holds: readonly StepId[];
  /** Closed only since one of these was logged last; empty = closed from the beginning. */
  readonly after: readonly Came[];
  /** Holds a step only while one of these of the owner's would be in circuit; empty = whatever is. */
  readonly whileIn: readonly Circuit[];
  /** Satisfied when, for one of these lists, each was logged, since it was closed. */
  readonly until: readonly (readonly Came[])[];
  /** Only while belief in these faults together is at least this; 0 = always. */
  readonly when: { readonly faults: readonly FaultId[]; readonly atLeast: number } | null;
  /** Loaners of these standings may go in all the same. */
  readonly unless: readonly LoanerStanding[];
  readonly source: string;
};
