import type { Interval } from '../figures/interval.ts';
import type { FigurePolicy } from '../labour/types.ts';
import type { Minutes } from '../time.ts';

/** When an estimate was made. */
export type EstimateMoment = 'told' | 'seen' | 'step' | 'confirmed' | 'agreed';

/** What it will likely take, with its range: simulated, seeded, reproducible. */
export type Estimate = {
  readonly moment: EstimateMoment;
  /** Hands-on minutes in all, spent ones included. */
  readonly handsOn: { readonly p10: Minutes; readonly p50: Minutes; readonly p90: Minutes };
  /** Price of everything, in minor units, without and with the likeliest part. */
  readonly price: { readonly p50: number; readonly p90: number };
  readonly withPart: { readonly name: string; readonly p50: number; readonly p90: number } | null;
  /** Chance that the whole passes the owner's limit, 0..1. */
  readonly passesLimit: number;
  /** Chance that a part has to be ordered for it, 0..1. */
  readonly mustOrder?: number | undefined;
  readonly drivers: readonly string[];
  readonly seed: number;
  readonly paths: number;
  /** How the runs chose their steps; `ratio` is a first figure. */
  readonly policy: FigurePolicy;
  /** Between which the middle of the hands-on minutes lies, 95 % sure; not known of figures from before it was reckoned so. */
  readonly medianBetween?: Interval | null | undefined;
  /** Beside runs as the Bench goes: what runs through the plan said before them. */
  readonly planned?: PlannedFigure | undefined;
};

/** The middle of the hands-on minutes by runs through the plan, and between which it lies. */
export type PlannedFigure = { readonly p50: Minutes; readonly medianBetween: Interval | null };

/** Estimates without those that a look further ahead has replaced since: of the same moment, by the same seed. */
export const standingFigures = <E extends Pick<Estimate, 'moment' | 'seed'>>(estimates: readonly E[]): readonly E[] =>
  estimates.filter(
    ({ moment, seed }, at) => !estimates.slice(at + 1).some((later) => later.seed === seed && later.moment === moment),
  );

/** The estimates after one more: runs as the Bench goes keep beside them what the plan said of the same moment. */
export function withEstimate<E extends Estimate>(estimates: readonly E[], more: E): readonly E[] {
  if (more.policy !== 'two-step') return [...estimates, more];
  const plan = estimates.findLast((one) => one.seed === more.seed && one.moment === more.moment);
  return [
    ...estimates,
    plan ? { ...more, planned: { p50: plan.handsOn.p50, medianBetween: plan.medianBetween ?? null } } : more,
  ];
}
