import type { PartKind, ThingKind } from '../../custody/part.ts';
import type { BenchTable } from './benchTable.ts';
import type { LoanerStanding } from './case.ts';
import type { Caution } from './cautions.ts';
import type { Gate } from './gate.ts';
import type { Group } from './groups.ts';

/** Ids are those of the fault model's files; what is not in the model is refused where it enters. */
export type FaultId = string;
export type StepId = string;
export type OutcomeId = string;
export type StateId = string;
export type SymptomId = string;
export type LoanerId = string;

/**
 * What the owner must have agreed to, or have at hand, before a step: consent ids, key-or-risk = recovery key in hand or
 * `risk-key` signed, and what takes days, agreed to by an answer of its own (`DAYS_AWAY`).
 */
export const NEEDS = [
  'open',
  'own-parts-in',
  'start-own',
  'read',
  'copy',
  'write',
  'risk',
  'key-or-risk',
  'order-to-try',
  'send-out',
] as const;
export type Need = (typeof NEEDS)[number];

/** How far the machine gets by itself: what a step may ask for before it makes sense. */
export const LIVES = ['none', 'reacts', 'posts', 'picture', 'system'] as const;
export type Life = (typeof LIVES)[number];

/** What a fault sits in. A fault shows only while everything it sits in is in circuit. */
export const CIRCUITS = [
  'mains',
  'cord',
  'supply',
  'plugs',
  'aux-lead',
  'front-leads',
  'board',
  'cell',
  'processor',
  'socket',
  'cooler',
  'dimm',
  'slots',
  'card',
  'card-slot',
  'riser',
  'picture-cable',
  'screen',
  'case',
  'hubs',
  'fans',
  'drive',
  'drive-leads',
  'drive-port',
  'add-in',
  'aerial',
  'outside',
  'settings',
  'software',
  'home',
] as const;
export type Circuit = (typeof CIRCUITS)[number];

/** Failures per start and per hour, for a fault that comes and goes. */
export type Rate = { readonly perStart: number; readonly perLoadHour: number; readonly perIdleHour: number };
/** How often a trial could have shown the fault. */
export type Exposure = { readonly starts: number; readonly loadHours: number; readonly idleHours: number };

export type Fault = {
  readonly id: FaultId;
  /** What is blamed when this fault is confirmed: a part, or what is no part. */
  readonly part:
    | PartKind
    | 'mains'
    | 'plugs'
    | 'settings'
    | 'software'
    | 'outside'
    | 'contact'
    | 'home'
    | 'none'
    | 'ours';
  readonly circuits: readonly Circuit[];
  /** Prior weight by symptom group; groups not listed have the model's floor. */
  readonly weights: { readonly [group in Group]?: number };
  /** Chance that this fault comes and goes, 0..1, before anything was told, and at what rate then. */
  readonly comesAndGoes: number;
  readonly rate: Rate;
  /** A mend by contact, setting or software rather than a part. */
  readonly mendedBy: 'part' | 'reseating' | 'setting' | 'cleaning' | 'software' | 'advice';
  /** Minutes to put it right once found, tracing apart. */
  readonly mendMinutes: number;
  readonly source: string;
};

/** What the job needs to write its custody moves by itself. */
export type StepHandling = {
  /** Owner's parts that leave their slot for the step. */
  readonly takesOut: readonly PartKind[];
  /** What of the shop's the step uses; null when nothing. */
  readonly borrows: ThingKind | null;
  /** Further things it uses. */
  readonly alsoBorrows: readonly ThingKind[];
  /** The slot kind that the borrowed part goes into; absent for equipment and for what stays beside the machine. */
  readonly intoSlotOf?: PartKind;
  /** Owner's part that goes into the second rig; absent when none. */
  readonly intoRig?: PartKind;
  /** Afterwards: everything back where it sat, stays out, or the bench is asked. */
  readonly putsBack: 'same-slot' | 'stays-out' | 'asked';
  /** Unplugged without leaving the slot. */
  readonly unplugs: readonly PartKind[];
  /** A part of this kind is ordered for trial, with the right to send it back; absent when none. */
  readonly orders?: PartKind;
  /** The owner's part of this kind goes to its maker or a laboratory and comes back; absent when none. */
  readonly sends?: PartKind;
  /** DIMMs change slots (a wrong slot put right, one module after the other). */
  readonly movesDimms: boolean;
};

export type OutcomeMeaning =
  /** The machine does what it should: the part (or handling) of this step is named. */
  | { readonly means: 'works' }
  | { readonly means: 'same' }
  | { readonly means: 'worse' }
  /** A finding that tells something and ends nothing. */
  | { readonly means: 'finding' }
  /** The finding is proof by itself for one of these faults. */
  | { readonly means: 'evidence'; readonly of: readonly FaultId[] }
  /** The suspect back in fails again; on the rig it fails there too. */
  | { readonly means: 'fails-again' }
  | { readonly means: 'fails-on-rig' }
  | { readonly means: 'works-on-rig' }
  /** Which of a sweep's handlings it was that cured it. */
  | { readonly means: 'separates'; readonly by: Fault['mendedBy'] }
  | { readonly means: 'could-not' };

export type Outcome = {
  readonly id: OutcomeId;
  readonly meaning: OutcomeMeaning;
  /** How far the machine gets after this outcome, when the outcome says so. */
  readonly life?: Life;
  /** Faults that are found so whether they show just then or not: a card too hot is so also while it does not shut off. */
  readonly whileQuiet: readonly FaultId[];
};

export type StepKind =
  | 'ask'
  | 'look'
  | 'measure'
  | 'setting'
  | 'reseat'
  | 'remove'
  | 'swap'
  | 'rig'
  | 'load'
  | 'sweep'
  | 'software'
  | 'clean'
  | 'back'
  /** A part is ordered to try, or theirs goes to its maker or a laboratory: days of waiting, by the owner's own word. */
  | 'order'
  | 'send'
  /** Measured again after mending: it opens what was held back, tells nothing of what was wrong, and is never planned. */
  | 'recheck';

export type Step = {
  readonly id: StepId;
  readonly kind: StepKind;
  readonly handsOn: number;
  readonly waiting: number;
  readonly open: readonly StateId[];
  readonly closed: readonly StateId[];
  readonly outcomes: readonly Outcome[];
  /** Index of the outcome of a machine with nothing wrong. */
  readonly normal: number;
  /** Circuits out (bare, or with our part in their place) while the outcome is looked at; `staysOut`: afterwards too, for good. */
  readonly takesOut: readonly Circuit[];
  readonly staysOut: boolean;
  /** Circuits that the step brings in although they are out otherwise. */
  readonly bringsIn: readonly Circuit[];
  /** On the second rig or a tester: only these of the owner's are in circuit; null at the machine. */
  readonly onRig: readonly Circuit[] | null;
  /** Faults that the step's own doing may mend before the look, with the chance; and by putting back, after the look. */
  readonly mends: { readonly [fault: FaultId]: number };
  readonly mendsAfter: { readonly [fault: FaultId]: number };
  /** The handlings behind `mends` (what the step is for, what it also does) and `mendsAfter`. */
  readonly does: readonly string[];
  readonly alsoDoes: readonly string[];
  readonly putBackDoes: readonly string[];
  /** How often a fault that comes and goes could have shown; null for a look or measurement that needs no failing. */
  readonly exposure: Exposure | null;
  readonly handling: StepHandling;
  readonly needs: readonly Need[];
  readonly life: Life;
  /** Machine facts the step needs: `graphicsInProcessor`, `card`, `dimms2`, … (see MachineFacts). */
  readonly asks: readonly MachineNeed[];
  readonly cautions: readonly Caution[];
  readonly repeatable: number;
  /** Chance of hurting something by the handling itself, and what. */
  readonly slip: { readonly chance: number; readonly part: PartKind } | null;
  /** Chance per fault that a borrowed or exposed sound part is hurt, or by the step what is failing of the owner's, and which. */
  readonly harm: readonly {
    readonly fault: FaultId;
    readonly chance: number;
    readonly part: ThingKind;
    readonly whose?: 'owner';
  }[];
  /** Only groups where the step makes sense; empty = all. */
  readonly groups: readonly Group[];
  /** Proves what was named; offered after a name or a cure, or when little else is left. */
  readonly confirming: boolean;
  /** Puts power through the machine, or through what of it is in the second rig. */
  readonly starts: boolean;
  readonly source: string;
};

export const MACHINE_NEEDS = [
  'graphics-in-processor',
  'card',
  'two-dimms',
  'socketed-memory',
  'socketed-processor',
  'standard-supply',
  'riser',
  'add-in',
  'modular-supply',
  'drive',
  'firmware-rescue',
  'second-slot',
  'key-in-hand',
  'named-part',
  'cure-to-prove',
  'after-our-work',
  'works-here',
  'gate-to-clear',
  'failed-here',
  'swept',
] as const;
export type MachineNeed = (typeof MACHINE_NEEDS)[number];

export const SWITCHES = [
  'wide-cooler',
  'card-covers',
  'closed-liquid',
  'open-loop',
  'glass',
  'small-case',
  'own-make-supply',
  'soldered-memory',
  'soldered-processor',
] as const;
/** Asked once at the first look; each moves minutes or nesting of the assembly states. */
export type Switch = (typeof SWITCHES)[number];

export type SwitchEffect = {
  readonly id: Switch;
  /** Minutes added to, or put in place of, a state's [opening, closing]. */
  readonly add: { readonly [state: StateId]: readonly [number, number] };
  readonly set: { readonly [state: StateId]: readonly [number, number] };
  readonly within: { readonly [state: StateId]: StateId };
  /** Steps that need a further state open. */
  readonly withinSteps: { readonly [state: StateId]: readonly StepId[] };
  readonly times: number;
  /** States that may not be opened; kinds of ours that do not fit. */
  readonly refuses: readonly StateId[];
  readonly noLoaner: readonly ThingKind[];
  readonly cautions: { readonly [state: StateId]: readonly Caution[] };
};

export type AssemblyState = {
  readonly id: StateId;
  readonly opening: number;
  readonly closing: number;
  /** The state it lies within: opened only while that is open; null when it is outermost. */
  readonly within: StateId | null;
  /** Chance that opening and closing leaves a fault of our own. */
  readonly ours: number;
};

/** Evidence told: a history or "only when" id and what it multiplies. */
export type Evidence = {
  readonly id: string;
  readonly multiplies: { readonly [fault: FaultId]: number };
  readonly source: string;
};

export type Often = {
  readonly id: string;
  /** What the answer says of a fault that comes and goes; null when it says nothing. */
  readonly rate: { readonly perStart: number; readonly perHour: number } | null;
  /** What it multiplies the chances of steady and of come-and-go by. */
  readonly steady: number;
  readonly comesAndGoes: number;
};

export type Confused = { readonly told: Group; readonly shows: Group; readonly weight: number };

export type SeenAs = { readonly seen: Group; readonly shows: Group; readonly weight: number };

export type ListedPair = {
  readonly faults: readonly [FaultId, FaultId];
  readonly weight: number;
  readonly source: string;
};

export type Symptom = {
  readonly id: SymptomId;
  readonly groups: readonly Group[];
  readonly stop: boolean;
  readonly copyFirst: boolean;
};

/** What parts are worth where nobody said, in minutes of the bench: every kind that a step can hurt or a fault sit in. */
export type PartValues = {
  readonly parts: { readonly [kind in ThingKind]?: number };
  readonly proving: number;
  readonly ownersTimes: number;
};

/** The fault model, checked and expanded: what can be wrong, what can be done, what each outcome tells. */
export type FaultModel = {
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
  readonly pairs: readonly ListedPair[];
  readonly gates: readonly Gate[];
  readonly inseparable: readonly (readonly FaultId[])[];
  /** What a bad loaner of a kind acts like, and how likely one of a standing is bad. */
  readonly badLoaner: {
    readonly [kind: string]: {
      readonly actsAs: FaultId;
      readonly chance: { readonly [standing in LoanerStanding]: number };
    };
  };
  readonly habit: {
    readonly first: readonly StepId[];
    readonly byGroup: { readonly [group in Group]?: readonly StepId[] };
  };
  readonly bench: BenchTable;
  readonly values: PartValues;
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
  readonly faultIndex: ReadonlyMap<FaultId, number>;
  readonly stepIndex: ReadonlyMap<StepId, number>;
  /** Bit sets over CIRCUITS: what each fault sits in. */
  readonly faultMask: Int32Array;
};

export type ModelRefusal = {
  readonly refused: 'fault-model';
  readonly file: string;
  readonly field: string;
  readonly because: string;
};

export type * from './answers.ts';
export type * from './benchTable.ts';
export type * from './case.ts';
export type * from './cautions.ts';
export type * from './gate.ts';
export type * from './groups.ts';
