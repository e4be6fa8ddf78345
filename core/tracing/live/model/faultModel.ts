import type { ThingKind } from '../../../custody/part.ts';
import type { BenchTable } from '../benchTable.ts';
import type { NewPart } from '../case.ts';
import type { Caution } from '../cautions.ts';
import type { Gate } from '../gate.ts';
import type { Group } from '../groups.ts';
import type { FaultId, OutcomeId, StepId } from '../ids.ts';
import type { LoanerProof } from '../loanerProof.ts';
import type { Memory } from '../memory.ts';
import type { AssemblyState, SwitchEffect } from './assemblyStates.ts';
import type { Fault } from './fault.ts';
import type { Step } from './step.ts';
import type { Confused, Evidence, Often, SeenAs, Symptom } from './told.ts';

export type ListedPair = {
  readonly faults: readonly [FaultId, FaultId];
  readonly weight: number;
  /** The weight where this was told as what changed last. */
  readonly told: { readonly [history: string]: number };
  readonly source: string;
};

/** What parts are worth where nobody said, in minutes of the bench: every kind that a step can hurt or a fault sit in. */
export type PartValues = {
  readonly parts: { readonly [kind in ThingKind]?: number };
  readonly proving: number;
  readonly ownersTimes: number;
};

/** One finding of a look at several places, there or not: rows[fault] and `nothing` are [P(not there), P(there)]. */
export type FindingRows = {
  readonly outcome: OutcomeId;
  readonly rows: readonly Float64Array[];
  readonly nothing: Float64Array;
};

/** The data of a fault model, expanded: what can be wrong, what can be done, what each outcome tells. */
export type ModelData = {
  readonly version: string;
  /** Weight of a fault in a group where it is not listed, for owners tell it wrongly. */
  readonly floor: number;
  readonly toldWrong: number;
  readonly seenWrong: number;
  /** Groups that are told, or seen at the first look, for another that is the truth. */
  readonly confused: readonly Confused[];
  readonly seenAs: readonly SeenAs[];
  readonly nowAndThen: { readonly groups: readonly Group[]; readonly steady: number };
  readonly kappa: number;
  readonly kappaSource: string;
  readonly symptoms: readonly Symptom[];
  readonly faults: readonly Fault[];
  readonly steps: readonly Step[];
  readonly states: readonly AssemblyState[];
  readonly switches: readonly SwitchEffect[];
  readonly evidence: readonly Evidence[];
  readonly often: readonly Often[];
  /** How many times likelier each fault is where this part was added, by kind; the faults not named: 1. */
  readonly added: ReadonlyMap<NewPart, { readonly [fault: FaultId]: number }>;
  /** How many times likelier a fault is that the technician thinks it is. */
  readonly hunch: number;
  readonly pairs: readonly ListedPair[];
  readonly gates: readonly Gate[];
  readonly inseparable: readonly (readonly FaultId[])[];
  /** What a bad loaner of a kind acts like, and how likely one of a standing is bad. */
  readonly badLoaner: {
    readonly [kind: string]: {
      readonly actsAs: FaultId;
      readonly chance: { readonly [standing in LoanerProof]: number };
    };
  };
  readonly habit: {
    readonly first: readonly StepId[];
    readonly byGroup: { readonly [group in Group]?: readonly StepId[] };
  };
  readonly bench: BenchTable;
  readonly values: PartValues;
  /** What work does that is no step, and its cautions; of work without a line, by its kind. */
  readonly work: {
    readonly known: ReadonlyMap<string, DangersOfWork>;
    readonly others: { readonly [kind in 'fitting' | 'proof' | 'cleaning' | 'handling']: DangersOfWork };
  };
  /** What each handling may mend, chance by fault. */
  readonly handlings: { readonly [handling: string]: { readonly [fault: FaultId]: number } };
  /** P(outcome | fault), the fault in circuit and showing: rows[step][fault][outcome]; null where it follows from the group. */
  readonly rows: readonly (readonly (Float64Array | null)[])[];
  /** listed[step][fault] is 1 where the step states this fault's row itself: that row holds although the step takes the fault out. */
  readonly listed: readonly Uint8Array[];
  /** Rows by what the machine shows, for steps that look at just that; null for all others. */
  readonly byGroup: readonly ({ readonly [group in Group]: Float64Array } | null)[];
  /** P(outcome | nothing shows), and when only something of our own making shows. */
  readonly nothing: readonly Float64Array[];
  readonly ours: readonly Float64Array[];
  /** Of steps that look at several places: each finding by itself; empty for all others. */
  readonly findings: readonly (readonly FindingRows[])[];
  readonly faultIndex: ReadonlyMap<FaultId, number>;
  readonly stepIndex: ReadonlyMap<StepId, number>;
  /** Bit sets over CIRCUITS: what each fault sits in. */
  readonly faultMask: Int32Array;
};

/** A model opened for tracing, see `openTracing`: its data, and what was worked out of them. */
export type FaultModel = ModelData & { readonly memory: Memory };

/** What a piece of work that is no step does, as `Step.deeds`, and the cautions at it. */
export type DangersOfWork = { readonly deeds: readonly string[]; readonly cautions: readonly Caution[] };

export type ModelRefusal = {
  readonly refused: 'fault-model';
  readonly file: string;
  readonly field: string;
  readonly because: string;
};
