import type { Owner } from '../approval/owner.ts';
import type { Part } from '../custody/ledger.ts';
import type { Machine } from '../custody/machine.ts';
import type { Tag } from '../custody/part.ts';
import type { KeptPart } from '../custody/readouts/kept.ts';
import type { JobId, PartId } from '../ids.ts';
import type { Enquiry } from '../job/enquiry.ts';
import type { Missing } from '../job/home/canGoHome.ts';
import type { Job } from '../job/job.ts';
import type { Charges } from '../job/money/charges.ts';
import type { OrderDue } from '../job/orders/ordersDue.ts';
import type { Band } from '../job/promise/band.ts';
import type { PhoneSentence } from '../job/promise/phoneSentence.ts';
import type { Outlook } from '../job/promise/turns.ts';
import type { ShopSettings, Staff } from '../job/shop.ts';
import type { EstimatePolicy } from '../labour/types.ts';
import type { Refusal } from '../refusal.ts';
import type { Stage } from '../stage.ts';
import type { EpochMs, Minutes } from '../time.ts';
import type { Several } from '../tracing/live/model/fault.ts';
import type { LookPlace } from '../tracing/live/model/step.ts';
import type {
  Belief,
  BenchTable,
  Caution,
  EngineVerdict,
  StepHandling,
  StepOffer,
  Suspect,
} from '../tracing/live/types.ts';

/** One job on the day line. */
export type DayPoint = {
  readonly job: JobId;
  readonly called: string;
  readonly tag: Tag | null;
  readonly stage: Stage;
  readonly band: Band;
  readonly promised: EpochMs | null;
  /** Nine chances in ten to be ready by then, as the queue stands now. */
  readonly p90: EpochMs | null;
  /** The day that would be promised now. */
  readonly likely: EpochMs | null;
  readonly late: boolean;
  /** More likely late than not, as the queue stands now. */
  readonly willBeLate: boolean;
  /** A loaner this job waits for, and the job that has it. */
  readonly waitsFor: { readonly part: PartId; readonly name: string; readonly heldBy: JobId } | null;
  /** The owner is to be tried now: which try it is of how many; null `n`: tried as often as agreed, it may lapse. */
  readonly tryNow: { readonly n: number | null; readonly of: number } | null;
  /** What the desk may say on the phone, made from the journal. */
  readonly phone: PhoneSentence;
};

/** A job of which entries cannot be read, so that it is on no line: what is known of it, and how much is not. */
export type SetApartJob = {
  readonly job: JobId;
  /** Its owner, or else what the machine is called; '' where neither can be read. */
  readonly called: string;
  readonly tag: Tag | null;
  /** Where the lists have it; null where they do not. */
  readonly stage: Stage | null;
  readonly unreadable: readonly number[];
};

/** A machine that could use the night: long passes by id, which cost no hands. */
export type NightRow = { readonly job: JobId; readonly called: string; readonly work: readonly string[] };
/** Everything the Counter and the Bench show of one job. */
export type JobSheet = {
  readonly seq: number;
  readonly job: Job;
  readonly owner: Owner;
  readonly machine: Machine;
  readonly parts: readonly Part[];
  readonly rigs: readonly Machine[];
  readonly charges: Charges;
  readonly missing: readonly Missing[];
  readonly phone: PhoneSentence;
  readonly band: Band;
  /** When it will be ready, as the queue stands now; null when it is, or has gone. */
  readonly outlook: Outlook | null;
  /** Entries of it, of its owner, machine or parts that cannot be read, by their number: the rest is what can. */
  readonly unreadable: readonly number[];
  /** What of the estimate is being computed while this is read; null when it stands. */
  readonly computing: Computing | null;
};

/** A figure that is on its way: the first one, one by a look ahead, or what checks that by a longer one. */
export type Computing = EstimatePolicy;

/** What the engine says of a job now. */
export type TracingSheet = {
  readonly belief: Pick<Belief, 'contradiction' | 'droppedMass'>;
  /** `oneOf`: of what the machine has several, so that a verdict says which. */
  readonly suspects: readonly (Suspect & { readonly part: string; readonly oneOf: Several | null })[];
  readonly before: readonly Suspect[];
  readonly offer: StepOffer;
  readonly handling: {
    readonly [step: string]: {
      readonly handling: StepHandling;
      readonly outcomes: readonly string[];
      /** Places looked at in one go; empty where one outcome comes of it. */
      readonly places: readonly LookPlace[];
      /** What a sound machine shows. */
      readonly normal: string;
      readonly needs: readonly string[];
      readonly handsOn: number;
      readonly waiting: number;
      /** Shown however the step is begun. */
      readonly cautions: readonly Caution[];
    };
  };
  /** The shop's table of codes, and its bounds for the plug meter. */
  readonly bench: BenchTable;
  readonly verdict: EngineVerdict;
  readonly toldSeen: {
    readonly agree: readonly string[];
    readonly onlyTold: readonly string[];
    readonly onlySeen: readonly string[];
  };
};

/** What would follow the step on offer, each by the likeliest outcome of the one before; and what the owner may have to pay for. */
export type PlanAhead = {
  readonly follows: readonly { readonly step: string; readonly handsOn: Minutes; readonly waiting: Minutes }[];
  /** Suspects taken together by what is paid for, likeliest first; the price as the plan counts it, in minor units. */
  readonly remedies: readonly { readonly part: string; readonly p: number; readonly priceMinor: number }[];
};

/** The shop's parts where they lie. */
export type WallSheet = {
  readonly parts: readonly (Part & {
    /** By whom it was shown to work, by name; null for what is not known-good. */
    readonly proof: { readonly by: string } | null;
    readonly jobCalled: string | null;
    readonly overdue: boolean;
  })[];
  readonly rigs: readonly Machine[];
};

/** An order that is not done with, and whose job it is. */
export type OrderRow = OrderDue & { readonly job: JobId; readonly called: string };

/** A dead part we keep, and whose it was. */
export type KeptRow = KeptPart & { readonly called: string };

export type ShopSheet = {
  readonly settings: ShopSettings | null;
  readonly staff: readonly Staff[];
  /** Why nobody may act on these: an entry of the shop's own stream cannot be read. Null where all can. */
  readonly setApart: Refusal | null;
};

/** What a tag or a search leads to. */
export type FindHit = {
  readonly is: 'job' | 'part' | 'owner' | 'machine' | 'paper' | 'void-tag';
  readonly id: string;
  readonly job: JobId | null;
  /** Where its job stands; null where it has none, or none that can be read. */
  readonly stage: Stage | null;
  readonly title: string;
  readonly detail: string;
};

export type EnquirySheet = Enquiry;
