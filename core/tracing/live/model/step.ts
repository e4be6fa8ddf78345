import type { PartKind, ThingKind } from '../../../custody/part.ts';
import type { Caution } from '../cautions.ts';
import type { Group } from '../groups.ts';
import type { FaultId, OutcomeId, StateId, StepId } from '../ids.ts';
import type { Circuit } from './circuits.ts';
import type { Exposure, Fault } from './fault.ts';
import type { Life, MachineNeed, Need, Word } from './needs.ts';

/** One of the places that a look goes over, with what can be found there: several places can have something at once. */
export type LookPlace = { readonly id: string; readonly findings: readonly OutcomeId[] };

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
  /** Words of the owner's that are given with this outcome. */
  readonly gives: readonly Word[];
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

export type StepHarm = {
  readonly fault: FaultId;
  readonly chance: number;
  readonly part: ThingKind;
  readonly whose?: 'owner';
  /** Bits over CIRCUITS that must be in for it: what carries the fault, and the part itself where it is the owner's. */
  readonly meets: number;
};

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
  /** Places that are looked at in one go, each by itself with something found or not; empty: one outcome comes of it. */
  readonly places: readonly LookPlace[];
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
  /** What it does that can hurt, `DEEDS`, the drive being in circuit; with `:kind` where a part is meant. */
  readonly deeds: readonly string[];
  readonly repeatable: number;
  /** Chance of hurting something by the handling itself, and what. */
  readonly slip: { readonly chance: number; readonly part: PartKind } | null;
  /** Chance per fault that a sound part, borrowed or the owner's own, is hurt by the step, and which. */
  readonly harm: readonly StepHarm[];
  /** Only groups where the step makes sense; empty = all. */
  readonly groups: readonly Group[];
  /** Proves what was named; offered after a name or a cure, or when little else is left. */
  readonly confirming: boolean;
  /** Puts power through the machine, or through what of it is in the second rig. */
  readonly starts: boolean;
  readonly source: string;
};
