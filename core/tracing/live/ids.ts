/** Ids are those of the fault model's files; what is not in the model is refused where it enters. */
export type FaultId = string;

export type StepId = string;

export type OutcomeId = string;

export type StateId = string;

export type SymptomId = string;

export type LoanerId = string;
/** A gate: a step is held back until it is satisfied or the technician takes it on their own word. */
export type GateId = string;
