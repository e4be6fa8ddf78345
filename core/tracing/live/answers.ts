import type { ThingKind } from '../../custody/part.ts';
import type { Caution } from './cautions.ts';
import type { FaultId, GateId, LoanerId, OutcomeId, StateId, StepId } from './ids.ts';
import type { Fault } from './model/fault.ts';
import type { Life, MachineNeed, Need } from './model/needs.ts';

export type Suspect = {
  readonly fault: FaultId;
  /** Chance that this fault is there (alone or with another), 0..1. */
  readonly p: number;
  /** Chance that it was there and has been mended by what was done. */
  readonly mended: number;
  readonly comesAndGoes: number;
};

export type Contradiction = {
  /** Chance, over logs simulated from the best hypothesis, of one as unlikely as this. */
  readonly tail: number;
  /** The two entries whose removal helps most, the most helpful first. */
  readonly entries: readonly [string, string] | readonly [string];
};

export type Belief = {
  /** Every fault, likeliest first. */
  readonly suspects: readonly Suspect[];
  /** The likeliest hypotheses of two faults together. */
  readonly pairs: readonly { readonly faults: readonly [FaultId, FaultId]; readonly p: number }[];
  readonly loaners: readonly { readonly id: LoanerId; readonly bad: number }[];
  /** Prior mass of pairs too unlikely to be carried. */
  readonly droppedMass: number;
  /** Log of the probability of all that was logged, for comparison only. */
  readonly logLikelihood: number;
  readonly contradiction: Contradiction | null;
};

export type Method = 'easiest' | 'ratio' | 'rollout';

/** A fact behind a choice, by name; words come from assets/ by language. */
export type ReasonFact =
  | { readonly fact: 'told-changed'; readonly history: string; readonly fault: FaultId; readonly times: number }
  | { readonly fact: 'likely'; readonly fault: FaultId; readonly p: number }
  | { readonly fact: 'splits'; readonly faults: readonly FaultId[]; readonly p: number; readonly outcome: OutcomeId }
  | { readonly fact: 'cheap'; readonly minutes: number }
  | { readonly fact: 'already-open'; readonly state: StateId }
  /** It ends the tracing when a watch by this step, so many times, stays quiet afterwards. */
  | { readonly fact: 'then-watch'; readonly step: StepId; readonly times: number }
  | { readonly fact: 'nothing-at-risk' }
  | { readonly fact: 'measure-first'; readonly fault: FaultId; readonly part: ThingKind; readonly minutes: number }
  /** It opens the way to a step that is wanted: looked at, measured or asked first. */
  | { readonly fact: 'first-for'; readonly step: StepId }
  | { readonly fact: 'tells-nothing' }
  | {
      readonly fact: 'dear';
      readonly minutes: number;
      readonly because: 'hands' | 'waiting' | 'opening' | 'harm' | 'borrowing';
    }
  | { readonly fact: 'only-names' }
  | { readonly fact: 'confirms'; readonly part: Fault['part'] };

export type StepView = {
  readonly step: StepId;
  /** Hands-on and waiting of the step itself, and hands-on of what must be opened or closed before it. */
  readonly handsOn: number;
  readonly waiting: number;
  readonly moves: readonly {
    readonly state: StateId;
    readonly direction: 'open' | 'close';
    readonly minutes: number;
  }[];
  /** What the step costs as the plan counts it, and the share that is harm and slip. */
  readonly cost: number;
  readonly risk: number;
  readonly outcomes: readonly {
    readonly outcome: OutcomeId;
    readonly p: number;
    /** The suspects that this outcome would leave on top. */
    readonly leaves: readonly { readonly fault: FaultId; readonly p: number }[];
    /** Expected share that ends the tracing here. */
    readonly ends: boolean;
  }[];
  /** Suspects this step moves most, with the factor by which the best outcome could raise or lower them. */
  readonly splits: readonly FaultId[];
  readonly cautions: readonly Caution[];
  readonly borrows: readonly { readonly kind: ThingKind; readonly loaner: LoanerId | null }[];
  readonly facts: readonly ReasonFact[];
};

export type NotOffered = {
  readonly step: StepId;
  readonly why:
    | {
        readonly is: 'gate';
        readonly gate: GateId;
        readonly firstDo: readonly StepId[];
        /** All the ways to open it, `firstDo` the first of them. */
        readonly ways: readonly (readonly StepId[])[];
      }
    | { readonly is: 'no-loaner'; readonly kind: ThingKind; readonly because: 'none' | 'does-not-fit' | 'taken' }
    | { readonly is: 'word'; readonly need: Need }
    /** Nothing is ordered to try while one of ours would do. */
    | { readonly is: 'own-first'; readonly kind: ThingKind }
    | { readonly is: 'machine'; readonly need: MachineNeed }
    | { readonly is: 'life'; readonly needs: Life; readonly has: Life }
    | { readonly is: 'done' }
    | { readonly is: 'other-group' };
};

export type Proposal = {
  readonly step: StepId;
  readonly need: Need;
  readonly handsOn: number;
  readonly waiting: number;
  /** Minutes as the plan counts them, the delay included. */
  readonly cost: number;
};

export type StopAnswer =
  | {
      readonly stop: 'hand-over';
      /** Minutes that going on would take, mending in them where it is the worth that ends it; and what is left for it. */
      readonly expectedMinutes: number;
      readonly handOverMinutes: number;
      readonly because: 'no-step-left' | 'dearer-than-limit' | 'dearer-than-worth' | 'dearer-than-usual' | 'declined';
    }
  | { readonly stop: 'settled'; readonly verdict: EngineVerdict }
  /** Before it may end by a verdict safety asks for more, such as a copy, and nothing of that can be done now. */
  | { readonly stop: 'owed'; readonly verdict: EngineVerdict; readonly owed: readonly Owed[] };

/** What safety asks for before a verdict may end the tracing; any one of the ways is enough. */
export type Owed = {
  readonly gate: GateId;
  /** Each step of those ways, with what keeps it from being done; null: it can be done now. None: the owner decides. */
  readonly steps: readonly { readonly step: StepId; readonly why: NotOffered['why'] | null }[];
};

export type StepOffer = {
  readonly method: Method;
  /** A first answer by the ratio rule while the look-ahead is still computing. */
  readonly interim: boolean;
  readonly next: StepView | null;
  readonly stop: StopAnswer | null;
  /** Expected minutes until confirmed and proved, from here. */
  readonly expectedMinutes: number;
  readonly easiest: { readonly step: StepId | null; readonly expectedMinutes: number };
  /** Expected minutes saved against easiest-first, from here. */
  readonly saved: number;
  /** Others that could be done now, best first. */
  readonly others: readonly StepView[];
  readonly notOffered: readonly NotOffered[];
  /** What takes days and lacks only the owner's word for it: to be asked about, not to be begun. */
  readonly proposals: readonly Proposal[];
  readonly openStates: readonly StateId[];
};

/** One entry of the proof: what was done, what came out. */
export type EvidenceEntry = { readonly entry: string; readonly step: StepId; readonly outcome: OutcomeId };

export type Also = { readonly part: Fault['part']; readonly fault: FaultId; readonly p: number };

export type EngineVerdict =
  | { readonly verdict: 'tracing' }
  /** A known-good part or a handling made the machine work; not yet confirmed. */
  | {
      readonly verdict: 'named';
      readonly part: Fault['part'];
      readonly fault: FaultId;
      readonly p: number;
      /** Chance that it failed in just this way: the part is sure before that is. */
      readonly pFault: number;
      /** Other parts that are at fault as well, more likely than not: a new one of this kind leaves it as it is. */
      readonly also: readonly Also[];
      readonly evidence: readonly EvidenceEntry[];
      readonly confirmBy: readonly StepId[];
    }
  | {
      readonly verdict: 'confirmed';
      readonly way: 'both-ways' | 'second-rig' | 'own-evidence';
      readonly part: Fault['part'];
      readonly fault: FaultId;
      readonly p: number;
      /** Chance that it failed in just this way: the part is sure before that is. */
      readonly pFault: number;
      /** Other parts that are at fault as well, more likely than not: a new one of this kind leaves it as it is. */
      readonly also: readonly Also[];
      readonly evidence: readonly EvidenceEntry[];
    }
  | {
      readonly verdict: 'cured';
      readonly by: 'reseating' | 'setting' | 'cleaning' | 'software' | 'outside' | 'advice' | 'sweep';
      /** Null when a sweep cured it and which of its handlings did is not separated. */
      readonly fault: FaultId | null;
      readonly p: number;
      readonly evidence: readonly EvidenceEntry[];
      /** Where what was mended came and went: hours watched since, and its chance of having kept away all that time. */
      readonly watched?: { readonly hours: number; readonly hiddenChance: number };
      /** After a sweep: the step that finds out which of its handlings did it. It may be left at that. */
      readonly findOut?: StepId;
    }
  | {
      readonly verdict: 'not-reproduced';
      readonly hiddenChance: number;
      readonly left: readonly FaultId[];
      readonly evidence: readonly EvidenceEntry[];
    };
