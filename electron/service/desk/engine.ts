import type { Shop } from '../../../core/job/shop.ts';
import type { EstimateCancelled, EstimateRequest, LabourEstimate, WorkTask } from '../../../core/labour/types.ts';
import type { LiveTracing } from '../../../core/tracing/live/api.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';

/** What computes: the tracing engine with its model, and estimates. */
export type Engine = {
  readonly live: LiveTracing;
  /** The shop's fault model: as delivered, with its own changes, its priors moved by its own jobs. */
  readonly modelFor: (shop: Shop) => FaultModel;
  readonly estimate: (request: EstimateRequest) => LabourEstimate | EstimateCancelled;
  /** Work that follows once a fault is known: fitting, proving, cleaning. */
  readonly work: readonly WorkTask[];
};
