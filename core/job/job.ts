import { type Consents, noConsents } from '../approval/consent.ts';
import type { Question } from '../approval/question.ts';
import type { JobId, PartId } from '../ids.ts';
import type { Personal } from '../journal/personal.ts';
import type { Stage } from '../stage.ts';
import type { EpochMs } from '../time.ts';
import type { AgreedLine } from './agreedLine.ts';
import { type CameOfWork, takenInFirst } from './came.ts';
import type {
  Booked,
  Destroyed,
  Handover,
  Incident,
  JobVerdict,
  LeftLikeThis,
  OwnerFact,
  Payment,
  TakenIn,
  Thought,
} from './entries.ts';
import type { Estimate } from './estimate.ts';
import type { HowTold } from './howTold.ts';
import type { Order } from './orders/order.ts';
import type { BeforeFirstScrew, CameAlong, Thing } from './told.ts';
import type { TriedArrangement } from './triedArrangement.ts';
import type { Work } from './work.ts';

/** Why something was done, when, and who wrote it down. */
export type SaidWhy = { readonly why: string; readonly at: EpochMs; readonly by: string };
/** A payment as it was written down; one that was wrong is struck. */
export type PaidOrStruck = Payment & { readonly at: EpochMs; readonly by: string; readonly struck?: SaidWhy };

/** A job as its stream tells it. */
export type Job = TakenIn & {
  readonly id: JobId;
  readonly stage: Stage;
  readonly stages: readonly { readonly stage: Stage; readonly at: EpochMs; readonly why: string }[];
  readonly came: CameOfWork;
  readonly takenInAt: EpochMs;
  readonly takenInBy: string;
  /** The limit said at the counter; `limitMinor` is the one that holds now. */
  readonly firstLimitMinor: number;
  readonly consents: Consents;
  readonly before: BeforeFirstScrew | null;
  readonly found: readonly (CameAlong & { readonly where: string })[];
  readonly shopItemsOn: readonly Thing[];
  readonly photographs: readonly { readonly of: string; readonly blob: string; readonly at: EpochMs }[];
  readonly secrets: readonly { readonly id: string; readonly what: string }[];
  readonly seen: readonly string[] | null;
  readonly differs: boolean;
  readonly work: readonly Work[];
  /** Arrangements of its parts that were tried, in order. */
  readonly arrangements: readonly (TriedArrangement & { readonly at: EpochMs })[];
  readonly notes: readonly { readonly says: string | null; readonly foundByTheWay: boolean; readonly at: EpochMs }[];
  readonly estimates: readonly (Estimate & { readonly at: EpochMs })[];
  readonly promised: { readonly at: EpochMs; readonly p90: EpochMs; readonly told: boolean } | null;
  /** Each time the owner was told of the day, or of another one. */
  readonly promisesTold: readonly {
    readonly promised: EpochMs;
    readonly was: EpochMs | null;
    readonly how: HowTold;
    readonly at: EpochMs;
    readonly by: string;
  }[];
  readonly questions: readonly Question[];
  readonly verdict: JobVerdict | null;
  /** Who wrote the verdict down. */
  readonly judgedBy: string | null;
  /** What technicians thought it was, in order. */
  readonly thoughts: readonly (Thought & { readonly at: EpochMs; readonly by: string })[];
  readonly struckVerdicts: readonly JobVerdict[];
  readonly orders: readonly Order[];
  readonly agreedLines: readonly AgreedLine[];
  readonly booked: readonly Booked[];
  readonly paid: readonly PaidOrStruck[];
  /** The finding fee is not asked for. */
  readonly feeWaived: SaidWhy | null;
  /** It went home with so much still owed. */
  readonly leftUnpaid: (SaidWhy & { readonly minor: number }) | null;
  /** What came along and cannot be given back. */
  readonly lost: readonly {
    readonly id: string;
    readonly count: number;
    readonly says: string;
    readonly at: EpochMs;
  }[];
  /** Taken in by mistake. */
  readonly cancelled: SaidWhy | null;
  readonly ownerCorrections: readonly {
    readonly what: readonly OwnerFact[];
    readonly saidBy: Personal<string> | null;
    readonly how: HowTold | null;
    readonly at: EpochMs;
    readonly by: string;
  }[];
  /** When each question lapsed. */
  readonly lapses: { readonly [question: string]: EpochMs };
  readonly parts: readonly PartId[];
  readonly incidents: readonly (Incident & { readonly told: boolean; readonly at: EpochMs })[];
  readonly destroyed: readonly (Destroyed & { readonly at: EpochMs; readonly by: string })[];
  readonly left: (LeftLikeThis & { readonly at: EpochMs; readonly confirmed: boolean }) | null;
  readonly toldReadyAt: EpochMs | null;
  readonly reminders: readonly { readonly at: EpochMs; readonly last: boolean }[];
  readonly handover: (Handover & { readonly at: EpochMs }) | null;
  readonly cameBackAs: { readonly job: JobId; readonly same: 'same-fault' | 'new' | 'ours' } | null;
  readonly papers: readonly {
    readonly kind: string;
    readonly number: string;
    readonly supersedes: string | null;
    readonly part?: PartId | undefined;
    readonly at: EpochMs;
  }[];
};

/** A job that has just been taken in. */
export const newJob = (id: JobId, at: EpochMs, by: string, taken: TakenIn): Job => ({
  ...taken,
  id,
  stage: 'taken-in',
  stages: [{ stage: 'taken-in', at, why: 'taken-in' }],
  came: takenInFirst,
  takenInAt: at,
  takenInBy: by,
  firstLimitMinor: taken.limitMinor,
  consents: noConsents,
  before: null,
  found: [],
  shopItemsOn: [],
  photographs: [],
  secrets: [],
  seen: null,
  differs: false,
  work: [],
  arrangements: [],
  notes: [],
  estimates: [],
  promised: null,
  promisesTold: [],
  questions: [],
  verdict: null,
  judgedBy: null,
  thoughts: [],
  struckVerdicts: [],
  orders: [],
  agreedLines: [],
  booked: [],
  paid: [],
  feeWaived: null,
  leftUnpaid: null,
  lost: [],
  cancelled: null,
  ownerCorrections: [],
  lapses: {},
  parts: [],
  incidents: [],
  destroyed: [],
  left: null,
  toldReadyAt: null,
  reminders: [],
  handover: null,
  cameBackAs: null,
  papers: [],
});
