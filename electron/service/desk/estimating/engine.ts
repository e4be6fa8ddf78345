import type { PlanAhead, TracingSheet } from '../../../../core/contract/screens.ts';
import type { Shop } from '../../../../core/job/shop.ts';
import type { EstimateAsked, EstimateCancelled, LabourEstimate, WorkTask } from '../../../../core/labour/types.ts';
import type { LiveTracing } from '../../../../core/tracing/live/api.ts';
import type { FaultModel, Method, TracingCase } from '../../../../core/tracing/live/types.ts';

/** What computes: the tracing engine with its model, and estimates. What takes long is computed beside the service. */
export type Engine = {
  readonly live: LiveTracing;
  /** The shop's fault model: as delivered, with its own changes, its priors moved by its own jobs. */
  readonly modelFor: (shop: Shop) => FaultModel;
  /** By the shop's own model; a raised signal ends it early. */
  readonly estimate: (
    shop: Shop,
    asked: EstimateAsked,
    signal?: AbortSignal,
  ) => Promise<LabourEstimate | EstimateCancelled>;
  /** By the shop's own model; a raised signal ends it early, rejecting with the signal's reason. */
  readonly tracing: (shop: Shop, state: TracingCase, method: Method, signal?: AbortSignal) => Promise<TracingSheet>;
  /** What would follow the step on offer, and what remedies would cost, at this price of a minute (minor units). */
  readonly plan: (shop: Shop, state: TracingCase, perMinuteMinor: number, signal?: AbortSignal) => Promise<PlanAhead>;
  /** Work that follows once a fault is known: fitting, proving, cleaning. */
  readonly work: readonly WorkTask[];
  /** Ends what it computes with. */
  readonly end: () => Promise<void>;
};
