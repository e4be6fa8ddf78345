import type { ThreePoint } from '../figures/logNormal.ts';
import type { ScoredThoughts } from '../job/bench/scoredThoughts.ts';
import type { TimesLeftOut } from '../job/bench/timesOfJob.ts';
import type { EstimateMoment } from '../job/estimate.ts';
import type { LossCause } from '../job/home/lossesOf.ts';
import type { OwnLead } from '../job/promise/leadTimes.ts';
import type { NotScored } from '../job/promise/scoredEstimates.ts';
import type { Calibration } from '../labour/calibration/calibration.ts';
import type { Task } from '../labour/tasks/catalogue.ts';
import type { MovedTime } from '../labour/tasks/learnTimes.ts';
import type { Currency } from '../money/money.ts';
import type { PriorTally } from '../tracing/live/shop/closedTracing.ts';
import type { MovedPrior } from '../tracing/live/shop/learnPriors.ts';

/** A task whose minutes the shop's own times have moved. */
export type ReckonedTime = MovedTime & {
  readonly task: string;
  readonly of: Task['of'];
  readonly which: 'handsOn' | 'waiting';
  readonly stated: ThreePoint & { readonly skewed: boolean };
  readonly source: string;
  /** Own times it rests on. */
  readonly times: number;
};

/** What incidents cost the shop in a year, by whether their cause is known. */
export type YearsLoss = {
  readonly year: number;
  readonly cause: LossCause;
  readonly incidents: number;
  readonly minor: number;
};

/** What was said against what it came to, over the newest closed jobs. */
export type ReckoningSheet = {
  readonly currency: Currency | null;
  /** Closed jobs looked at. */
  readonly jobs: number;
  /** By the moment of the estimate; the earliest first. */
  readonly calibration: readonly { readonly moment: EstimateMoment; readonly figures: Calibration | null }[];
  readonly notScored: { readonly [why in NotScored]: number };
  /** Only tasks with own times, the most moved first. */
  readonly times: readonly ReckonedTime[];
  readonly timesLeftOut: TimesLeftOut;
  /** What the closed jobs would make of the stated priors, and the jobs that speak for none. */
  readonly priors: {
    readonly moved: readonly MovedPrior[];
    readonly tally: Pick<PriorTally, 'counted' | 'excluded'>;
    /** Jobs that were counted when priors were last taken over into the model; null: the priors are as stated. */
    readonly takenOver: number | null;
  };
  /** "I think it is …" against the model's own first thought. */
  readonly thoughts: ScoredThoughts;
  readonly losses: readonly YearsLoss[];
  /** From ordering a part to having it, days; null before the shop is set up. */
  readonly lead: OwnLead | null;
};
