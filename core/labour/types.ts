import type { Interval } from '../figures/interval.ts';
import type { ThreePoint } from '../figures/logNormal.ts';
import type { FaultModel, TracingCase } from '../tracing/live/types.ts';
import type { EstimatePolicy, FigurePolicy } from './policies.ts';
import type { TaskTime } from './tasks/taskTime.ts';

export type { EstimatePolicy, FigurePolicy, PlanPolicy } from './policies.ts';

/** What hands-on work that is no tracing step can be. */
export const TASK_KINDS = ['fitting', 'proof', 'cleaning', 'handling'] as const;

/** Hands-on work that follows once the fault is known (or known work from the start). */
export type WorkTask = {
  readonly id: string;
  readonly kind: (typeof TASK_KINDS)[number];
  readonly minutes: ThreePoint;
  /** Chance that it is needed, 0..1; 1 when always. */
  readonly chance: number;
};

type Rates = {
  readonly perMinuteMinor: number;
  /** Already spent on this job, minor units and hands-on minutes. */
  readonly spentMinor: number;
  readonly spentMinutes: number;
  readonly limitMinor: number | null;
  /** The work has an agreed price, which is in what is spent already: its minutes cost the owner nothing more. */
  readonly fixed?: boolean;
  /** Price of the part that would be needed, by kind, minor units; kinds not listed count nothing. */
  readonly parts: { readonly [kind: string]: number };
};

/** What an estimate is asked of, but for the shop's fault model. */
export type EstimateAsked = {
  /** Null for known work: nothing has to be found. */
  readonly case: TracingCase | null;
  readonly work: readonly WorkTask[];
  /** What each step takes by the shop's own times; one that is not named takes the fault model's minutes. */
  readonly stepTimes: { readonly [step: string]: TaskTime };
  readonly rates: Rates;
  readonly seed: number;
  readonly paths: number;
  readonly policy: EstimatePolicy;
};

export type EstimateRequest = EstimateAsked & {
  readonly model: FaultModel;
  /** Asked now and then; true ends the estimate. */
  readonly cancelled?: () => boolean;
};

type Band = { readonly p10: number; readonly p50: number; readonly p90: number };

export type LabourEstimate = {
  /** Hands-on minutes in all, spent ones included. */
  readonly handsOn: Band;
  /** Of it still to come. */
  readonly toCome: Band;
  /** Work only, and with the parts that the simulated faults would need; minor units. */
  readonly price: { readonly p50: number; readonly p90: number };
  readonly withParts: { readonly p50: number; readonly p90: number };
  /** Chance that work and parts together pass the limit, 0..1; null without a limit. */
  readonly passesLimit: number | null;
  /** Kind of part that the simulated faults ask for most often; null when none does. */
  readonly likeliestPart: string | null;
  /** Chance that a part of that kind is needed, 0..1, by kind; kinds never needed are left out. */
  readonly partChances: { readonly [kind: string]: number };
  /** Chance that tracing ends by handing over. */
  readonly handOver: number;
  /** What drives the spread, largest first: share of the variance of hands-on minutes. */
  readonly drivers: readonly {
    readonly what: 'fault' | 'task-times' | 'work';
    readonly share: number;
    readonly id: string | null;
  }[];
  /**
   * Between which the median of `handsOn` lies, 95 % sure, minutes: how far the chance of the simulation itself reaches.
   * Null for fewer than six runs.
   */
  readonly medianBetween: Interval | null;
  readonly seed: number;
  readonly paths: number;
  readonly policy: FigurePolicy;
  /** By the policy that needs no look-ahead: said at once, to be followed by a better one. */
  readonly firstFigure: boolean;
};

export type EstimateCancelled = { readonly refused: 'estimate-cancelled'; readonly paths: number };
