import { z } from 'zod';
import { FIGURE_POLICIES } from '../labour/policies.ts';
import type { Shaped } from '../shape.ts';
import { minutesShape } from '../time.ts';

/** When an estimate was made. */
export const ESTIMATE_MOMENTS = ['told', 'seen', 'step', 'confirmed', 'agreed'] as const;
export type EstimateMoment = (typeof ESTIMATE_MOMENTS)[number];

const intervalShape = z.strictObject({ low: z.number(), high: z.number() });

/** The middle of the hands-on minutes by runs through the plan, and between which it lies. */
const plannedFigureShape = z.strictObject({ p50: minutesShape, medianBetween: intervalShape.nullable() });

/** What it will likely take, with its range: simulated, seeded, reproducible. */
export const estimateShape = z.strictObject({
  moment: z.enum(ESTIMATE_MOMENTS),
  /** Hands-on minutes in all, spent ones included. */
  handsOn: z.strictObject({ p10: minutesShape, p50: minutesShape, p90: minutesShape }),
  /** Price of everything, in minor units, without and with the likeliest part. */
  price: z.strictObject({ p50: z.number(), p90: z.number() }),
  withPart: z.strictObject({ name: z.string(), p50: z.number(), p90: z.number() }).nullable(),
  /** Chance that the whole passes the owner's limit, 0..1. */
  passesLimit: z.number(),
  /** Chance that a part has to be ordered for it, 0..1. */
  mustOrder: z.number().optional(),
  drivers: z.array(z.string()),
  seed: z.number(),
  paths: z.number(),
  /** How the runs chose their steps; `ratio` is a first figure. */
  policy: z.enum(FIGURE_POLICIES),
  /** Between which the middle of the hands-on minutes lies, 95 % sure; not known of figures from before it was reckoned so. */
  medianBetween: intervalShape.nullable().optional(),
  /** Beside runs as the Bench goes: what runs through the plan said before them. */
  planned: plannedFigureShape.optional(),
});
export type Estimate = Shaped<typeof estimateShape>;

/** Estimates without those that a look further ahead has replaced since: of the same moment, by the same seed. */
export const newestFigures = <E extends Pick<Estimate, 'moment' | 'seed'>>(estimates: readonly E[]): readonly E[] =>
  estimates.filter(
    ({ moment, seed }, at) => !estimates.slice(at + 1).some((later) => later.seed === seed && later.moment === moment),
  );

/** The first standing estimate of each moment, the latest moment first. */
export const firstOfMoments = <E extends Pick<Estimate, 'moment' | 'seed'>>(estimates: readonly E[]): readonly E[] => [
  ...new Map(
    newestFigures(estimates)
      .toReversed()
      .map((one) => [one.moment, one]),
  ).values(),
];

/** The estimates after one more: runs as the Bench goes keep beside them what the plan said of the same moment. */
export function withEstimate<E extends Estimate>(estimates: readonly E[], more: E): readonly E[] {
  if (more.policy !== 'two-step') return [...estimates, more];
  const plan = estimates.findLast((one) => one.seed === more.seed && one.moment === more.moment);
  return [
    ...estimates,
    plan ? { ...more, planned: { p50: plan.handsOn.p50, medianBetween: plan.medianBetween ?? null } } : more,
  ];
}
