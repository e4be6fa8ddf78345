import type { Attributes, PartKind, ThingKind } from '../../custody/part.ts';
import type { FaultId, GateId, LoanerId, OutcomeId, StepId, SymptomId } from './ids.ts';
import type { LoanerProof } from './loanerProof.ts';
import type { Switch } from './model/assemblyStates.ts';
import type { Circuit } from './model/circuits.ts';

/** A shop part or piece of equipment that could be borrowed now. */
export type Loaner = {
  readonly id: LoanerId;
  readonly kind: ThingKind;
  readonly standing: LoanerProof;
  /** Price to replace it, minor units, null where none was recorded; minutes to prove it anew; jobs that want it too. */
  readonly valueMinor: number | null;
  readonly proveMinutes: number;
  readonly wantedBy: number;
  readonly fits: 'yes' | 'no' | 'unknown';
  /** Someone else has it now. */
  readonly taken: boolean;
  readonly attributes?: Attributes;
};

/** The kinds of part that the owner is asked about where one was added or changed. */
export const NEW_PARTS = ['card', 'dimm', 'processor', 'drive', 'supply', 'other', 'none'] as const;
export type NewPart = (typeof NEW_PARTS)[number];

/** What is known of the machine; null = not known. */
export type MachineFacts = {
  readonly graphicsInProcessor: boolean | null;
  readonly card: boolean | null;
  readonly dimms: number | null;
  readonly slots: number | null;
  readonly drives: number | null;
  readonly riser: boolean | null;
  readonly addIns: boolean | null;
  readonly modularSupply: boolean | null;
  readonly firmwareRescue: boolean | null;
  readonly encrypted: 'yes' | 'no' | 'unknown';
  readonly keyInHand: boolean;
  /** Which kind of part was added or changed last, where that is known. */
  readonly newPart: NewPart | null;
  /** What the supply is rated for, and what all that hangs on it may take, watts. */
  readonly supplyWatts: number | null;
  readonly needsWatts: number | null;
  /** What parts of the owner's are known to be worth, minor units, the dearest of a kind. */
  readonly valuesMinor: { readonly [kind in PartKind]?: number };
};

export type LoggedStep = {
  /** The journal's id of this step, named in contradictions and evidence. */
  readonly entry: string;
  /** A step of the model, or `unlisted` for something that is not in it (minutes count, belief stays). */
  readonly step: StepId;
  readonly outcome: OutcomeId;
  /** What else was found in the same look, of a step that looks at several places. */
  readonly also?: readonly OutcomeId[];
  readonly handsOn: number;
  readonly waiting: number;
  /** Shop parts that were in circuit in this step, with the standing they had then. */
  readonly loaners: readonly { readonly id: LoanerId; readonly kind: ThingKind; readonly standing: LoanerProof }[];
  /** All circuits that are out (or replaced by our part) after this step; `leftOutAfter` gives it for the usual answers. */
  readonly leftOut: readonly Circuit[];
  readonly struck: boolean;
};

export type TracingCase = {
  readonly told: {
    readonly symptoms: readonly SymptomId[];
    readonly changed: readonly string[];
    readonly often: readonly string[];
    readonly onlyWhen: readonly string[];
    /** The technician's own figure for a fault that comes and goes; null: what was told sets it. */
    readonly rate: { readonly perStart: number; readonly perHour: number } | null;
  };
  /** What the technician thinks it is, as their own evidence; null: they said nothing. */
  readonly hunch: FaultId | null;
  /** Symptoms the bench saw; empty before the first power-on. */
  readonly seen: readonly SymptomId[];
  readonly switches: readonly Switch[];
  readonly machine: MachineFacts;
  readonly log: readonly LoggedStep[];
  readonly stock: readonly Loaner[];
  /** Consents that are agreed to now; `key-or-risk` follows from the machine and `risk-key`. */
  readonly agreed: readonly string[];
  /**
   * Where what wants an answer of its own is given: on the sheet, which `agreed` tells; in a run over what is to come,
   * signatures as they are said in it; in a bench case by the log alone, days and money as well.
   */
  readonly signatures: 'on-the-sheet' | 'as-said' | 'in-the-log';
  /** Gates that the technician passes on their own word. */
  readonly passedGates: readonly GateId[];
  readonly money: {
    readonly perMinuteMinor: number;
    readonly limitMinor: number | null;
    /** What is owed already if it is repaired, a finding fee that comes on top in it. */
    readonly spentMinor: number;
    /** What the machine is worth to its owner, working; null where it is not known, or goes on all the same. */
    readonly worthMinor: number | null;
  };
  /** Minutes until the shop closes, for what waiting runs past it; null when it does not matter. */
  readonly untilClosing: number | null;
  /** What each further day costs against the promise, bench minutes; days until the promised one, null without it. */
  readonly delay: { readonly dayMinutes: number; readonly daysLeft: number | null };
};
