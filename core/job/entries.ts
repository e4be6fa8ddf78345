import type { ConsentAnswer, ConsentId } from '../approval/consent.ts';
import type { Answer, Question, Try } from '../approval/question.ts';
import type { Signature } from '../approval/signature.ts';
import type { Tag } from '../custody/part.ts';
import type { EnquiryId, JobId, MachineId, OwnerId, PartId, QuestionId } from '../ids.ts';
import type { EntryOf } from '../journal/entry.ts';
import type { Personal } from '../journal/personal.ts';
import type { Currency } from '../money/money.ts';
import type { TaxTerms } from '../money/taxTerms.ts';
import type { Stage } from '../stage.ts';
import type { EpochMs, Minutes } from '../time.ts';
import type { Core } from './agreedLine.ts';
import type { Estimate } from './estimate.ts';
import type { Mishap } from './home/mishaps.ts';
import type { OrderBodies } from './orders/orderEntries.ts';
import type { BeforeFirstScrew, Thing, Told } from './told.ts';
import type { TriedArrangement } from './triedArrangement.ts';
import type { Reading, Turn, UsedLoaner, Work, WorkKind } from './work.ts';

/** How the job is paid: charged, free of charge, or finding the fault only. */
export type Charging = 'charged' | 'free' | 'diagnosis-only';

/** What a job is charged by, as the shop had it when the machine was taken in. */
export type JobTerms = {
  readonly currency: Currency;
  readonly tax: TaxTerms;
  /** The finding fee is inside the price of a repair; else it comes on top, and covers so many minutes of tracing. */
  readonly feeCredited: boolean;
  readonly feeCoversMinutes: number;
};

/** What is put on the bill, or taken off it, without a question of its own. */
export type Booked =
  | { readonly is: 'small-part'; readonly what: string; readonly priceMinor: number }
  | { readonly is: 'given'; readonly what: string; readonly worthMinor: number }
  | { readonly is: 'discount'; readonly why: string; readonly minor: number }
  | { readonly is: 'storage'; readonly days: number; readonly minor: number };

/** Money taken from the owner, before or at hand-over, or given back to them: then `minor` is below zero. */
export type Payment = {
  readonly minor: number;
  readonly how: 'cash' | 'card' | 'transfer';
  readonly for: 'deposit' | 'bill' | 'back';
};

export type TakenIn = {
  readonly owner: OwnerId;
  readonly machine: MachineId;
  readonly tag: Tag;
  /** Known work has its task list at once; tracing can be opened later. */
  readonly tasks: readonly { readonly id: string; readonly fixedMinor: number | null }[] | null;
  readonly charging: Charging;
  readonly enquiry: EnquiryId | null;
  readonly cameBackFrom: JobId | null;
  readonly told: Told;
  readonly cameAlong: readonly Thing[];
  readonly lift: 'one' | 'two';
  readonly limitMinor: number;
  /** What the machine is worth to its owner, working; null or left out: not known. */
  readonly worthMinor?: number | null | undefined;
  readonly smallPartsUpToMinor: number;
  readonly feeMinor: number;
  readonly perMinuteMinor: number;
  /** The shop's terms of that day: what the owner agreed to stays, whatever the shop changes later. */
  readonly terms?: JobTerms | undefined;
  readonly deadline: EpochMs | null;
  readonly substitution: { readonly used: boolean; readonly lesser: 'no' | 'ask' };
  readonly recording: boolean;
};
/** By what it works again, where no part is to blame; a sweep is several small things at once. */
export const CURES = ['reseating', 'cleaning', 'setting', 'software', 'outside', 'sweep'] as const;
export type Cure = (typeof CURES)[number];

/** Why a verdict may be written: confirmed in one of three ways, or less than that. */
export type Verdict =
  | { readonly is: 'named'; readonly fault: string; readonly part: PartId | null }
  | {
      readonly is: 'confirmed';
      readonly fault: string;
      readonly part: PartId;
      readonly way: 'both-ways' | 'on-the-second-rig' | 'by-its-own-evidence';
      readonly evidence: readonly string[];
      readonly readings: readonly Reading[];
    }
  | {
      readonly is: 'cured';
      readonly by: Cure;
      readonly fault: string | null;
      /** Where it came and went: hours watched since, and the chance that it would have kept away all that time. */
      readonly watched?: { readonly hours: number; readonly hiddenChance: number } | undefined;
    }
  | {
      readonly is: 'not-reproduced';
      readonly watchedHours: number;
      readonly hiddenChance: number | null;
      readonly left: readonly string[];
    }
  | { readonly is: 'given-up'; readonly left: readonly string[] };

export type Difference = {
  readonly what: 'settings-cleared' | 'tie-cut' | 'died-here' | 'hours-more' | 'plugs-out-and-in' | 'other';
  readonly says: Personal<string> | null;
};

export type Incident = {
  readonly id: string;
  readonly what: Personal<string>;
  readonly part: PartId | null;
  readonly cause: 'known' | 'unknown';
  /** When it happened, where that is not when it was written down. */
  readonly happenedAt?: EpochMs | undefined;
  readonly how?: Mishap | undefined;
  readonly partIs?: 'hurt' | 'dead' | 'lost' | undefined;
  readonly photographs: readonly string[];
  /** The shop's own cost on this job; never on the bill. */
  readonly costMinor: number;
};

/** A data carrier that was destroyed for good. */
export type Destroyed = {
  readonly part: PartId;
  readonly medium: { readonly maker: string; readonly model: string; readonly type: string };
  readonly serial: Personal<string>;
  readonly technique: string;
  readonly tool: string;
  /** How it was looked over. */
  readonly checked: string;
  readonly verifiedBy: string;
  readonly certificate: string;
};

export type LeftLikeThis = {
  readonly open: readonly string[];
  readonly unplugged: readonly string[];
  readonly lying: readonly { readonly what: string; readonly where: string }[];
  readonly doNotPower: string | null;
};

export type Handover = {
  readonly collectedBy: Personal<string>;
  readonly signature: Signature;
  readonly returned: readonly Thing[];
  readonly asItCame: boolean;
  readonly differences: readonly Difference[];
};

/** By what way the owner was told of something. */
export const HOW_TOLD = ['counter', 'phone', 'mail', 'message'] as const;
export type HowTold = (typeof HOW_TOLD)[number];

export type JobBodies = OrderBodies & {
  readonly 'taken-in': TakenIn;
  readonly 'sheet-signed': {
    readonly answers: { readonly [id: string]: ConsentAnswer };
    readonly signature: Signature;
  };
  readonly 'consent-signed-alone': {
    readonly id: ConsentId;
    readonly answer: ConsentAnswer;
    readonly signature: Signature;
    readonly about: string | null;
  };
  readonly 'consent-answered': {
    readonly id: ConsentId;
    readonly answer: ConsentAnswer;
    readonly how: Answer['how'];
    readonly name: Personal<string>;
  };
  readonly 'consent-withdrawn': { readonly id: ConsentId };
  readonly 'asked-before-first-screw': BeforeFirstScrew;
  readonly 'thing-found': Thing & { readonly where: string };
  readonly 'ours-on': Thing;
  readonly 'ours-off': Thing;
  readonly photographed: { readonly of: string; readonly blob: string };
  readonly 'secret-sealed': { readonly what: string; readonly secret: Personal<string> };
  readonly 'secret-wiped': { readonly what: string };
  /** What the machine is worth to its owner, told later or put right. */
  readonly 'worth-told': { readonly worthMinor: number | null };
  readonly 'told-corrected': { readonly symptoms: readonly string[]; readonly often: readonly string[] };
  readonly seen: { readonly symptoms: readonly string[]; readonly differs: boolean };
  readonly 'could-not-be-reproduced': { readonly says: string };
  readonly 'stage-entered': { readonly stage: Stage; readonly why: string };
  readonly 'work-started': {
    readonly run: string;
    readonly kind: WorkKind;
    readonly what: string;
    readonly startedAt: EpochMs;
    readonly loaners: readonly UsedLoaner[];
    readonly took: Work['took'];
  };
  readonly 'work-finished': {
    readonly run: string;
    readonly kind: WorkKind;
    readonly what: string;
    readonly startedAt: EpochMs;
    readonly endedAt: EpochMs;
    readonly outcome: string;
    readonly handsOn: Minutes;
    /** Of those, the minutes beyond the owner's word: the shop's own, never charged. */
    readonly ours?: Minutes | undefined;
    readonly waiting: Minutes;
    /** The clock ran on without anybody: what it ran, and why it was cut. */
    readonly forgotten?: Work['forgotten'];
    readonly readings: readonly Reading[];
    readonly passed: boolean | null;
    readonly note: Personal<string> | null;
    readonly loaners: readonly UsedLoaner[];
    readonly took: Work['took'];
    readonly leftOut: readonly string[];
  };
  readonly 'arrangement-tried': TriedArrangement;
  readonly 'work-turned': Turn & { readonly run: string };
  readonly 'work-struck': { readonly run: string; readonly why: string };
  readonly noted: { readonly says: Personal<string>; readonly foundByTheWay: boolean };
  readonly estimated: Estimate;
  readonly promised: { readonly at: EpochMs; readonly p90: EpochMs; readonly told: boolean };
  /** The owner was told of the day; `was`: the day they knew before. */
  readonly 'promise-told': { readonly promised: EpochMs; readonly was: EpochMs | null; readonly how: HowTold };
  readonly asked: Question;
  readonly tried: Try & { readonly question: QuestionId; readonly number: Personal<string> | null };
  readonly answered: { readonly question: QuestionId; readonly answer: Answer };
  readonly 'question-lapsed': { readonly question: QuestionId };
  readonly 'word-withdrawn': { readonly question: QuestionId; readonly limitMinor?: number | undefined };
  readonly 'charge-booked': Booked;
  readonly paid: Payment;
  readonly 'sold-fitted': { readonly part: PartId };
  readonly judged: Verdict;
  readonly 'verdict-struck': { readonly why: 'came-back' | 'wrong'; readonly by: JobId | null };
  readonly sold: {
    readonly what: string;
    readonly part: PartId | null;
    readonly priceMinor: number;
    readonly warrantyMonths: number;
    readonly question: QuestionId;
    readonly taxPermille?: number | undefined;
    readonly core?: Core | undefined;
  };
  readonly 'part-joined': { readonly part: PartId };
  readonly incident: Incident;
  readonly destroyed: Destroyed;
  readonly 'incident-told': { readonly id: string; readonly how: Answer['how']; readonly name: Personal<string> };
  readonly 'left-like-this': LeftLikeThis;
  readonly 'left-confirmed': Record<string, never>;
  readonly 'told-ready': { readonly how: 'phone' | 'mail' | 'message' };
  readonly reminded: { readonly last: boolean };
  readonly 'handed-over': Handover;
  readonly 'came-back': { readonly as: JobId; readonly same: 'same-fault' | 'new' | 'ours' };
  readonly 'paper-named': {
    readonly kind: string;
    readonly number: string;
    readonly supersedes: string | null;
    /** The part it is about, where a job has one of its kind for each part. */
    readonly part?: PartId | undefined;
  };
};

export type JobEntry = EntryOf<`job:${string}`, JobBodies>;
