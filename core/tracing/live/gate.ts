import type { FaultId, GateId, OutcomeId, StepId } from './ids.ts';
import type { LoanerProof } from './loanerProof.ts';
import type { Circuit } from './model/circuits.ts';

/** A step logged with one of these outcomes. */
export type Came = { readonly step: StepId; readonly outcomes: readonly OutcomeId[] };

/** What is hurt where a gate is passed too early: people or the machine, data, a part of ours, or the owner's word. */
export const HARMS = ['machine', 'data', 'ours', 'word'] as const;
export type Harm = (typeof HARMS)[number];

/** Facts of the machine, or words of its owner's, that a safety rule asks for. */
export const SAFETY_FACTS = [
  'own-plug',
  'liquid-cooler',
  'open-loop',
  'locked-without-key',
  'array',
  'settings-hold-data',
  'modular-leads',
  'new-supply',
  'copy-wanted',
] as const;
export type SafetyFact = (typeof SAFETY_FACTS)[number];

/**
 * What a safety rule holds back, and while what is told, seen, found and known of the machine: all that is given must be so,
 * of a list one is enough.
 */
export type SafetyHold = {
  /** What a step does, `DEEDS`, with `:kind` where a part is meant. */
  readonly deeds: readonly string[];
  /** Steps that do such a thing and are right all the same; those that open it are among them. */
  readonly spares: readonly StepId[];
  /** Symptoms that were told or seen, or histories that were told; empty = whatever was. */
  readonly told: readonly string[];
  readonly alsoTold: readonly string[];
  /** All of these. */
  readonly facts: readonly SafetyFact[];
  /** Found at any time, beside what closed it. */
  readonly found: readonly Came[];
  /** Found at any time, one of these lifts it. */
  readonly liftedBy: readonly Came[];
  /** Only where one of these was out, or ours in its place, when something made it work: the suspect that would go back in. */
  readonly suspectIn: readonly Circuit[];
  /** The steps that do such a thing on some machine: no other is ever held by it. */
  readonly steps: ReadonlySet<StepId>;
};

export type Gate = {
  readonly id: GateId;
  /** Steps held back. */
  readonly holds: readonly StepId[];
  /** Closed only since one of these was logged last; empty = closed from the beginning. */
  readonly after: readonly Came[];
  /** Holds a step only while one of these of the owner's would be in circuit; empty = whatever is. */
  readonly whileIn: readonly Circuit[];
  /** Satisfied when, for one of these lists, each was logged, since it was closed; empty = never, but on one's own word. */
  readonly until: readonly (readonly Came[])[];
  /** Only while belief in these faults together is at least this; 0 = always. */
  readonly when: { readonly faults: readonly FaultId[]; readonly atLeast: number } | null;
  /** Loaners of these standings may go in all the same. */
  readonly unless: readonly LoanerProof[];
  /** Not of a machine that came as one that runs, and to which nothing happened since that asks for a look first. */
  readonly sparesRunning: boolean;
  /** What is hurt otherwise. Harm to data and to the owner's word is opened by no word of the technician's. */
  readonly harm: Harm;
  /** Set for a rule of safety: it holds steps by what they do; null for one that names them. */
  readonly safety: SafetyHold | null;
  readonly source: string;
};
