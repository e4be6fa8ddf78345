/** What the fault model, a case and the engine's answers are made of, in one place for whoever takes them in. */
export type * from './answers.ts';
export type * from './benchTable.ts';
export type * from './case.ts';
export type * from './cautions.ts';
export type * from './gate.ts';
export type * from './groups.ts';
export type * from './ids.ts';
export type * from './loanerProof.ts';
export type * from './model/assemblyStates.ts';
export type * from './model/circuits.ts';
export type * from './model/fault.ts';
export type * from './model/faultModel.ts';
export type * from './model/needs.ts';
export type * from './model/step.ts';
export type * from './model/told.ts';
