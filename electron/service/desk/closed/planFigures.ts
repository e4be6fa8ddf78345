import type { PlanAhead } from '../../../../core/contract/screens.ts';
import { minutes } from '../../../../core/time.ts';
import { thenSteps } from '../../../../core/tracing/cases/answer/thenSteps.ts';
import { suspectsOf } from '../../../../core/tracing/live/belief/belief.ts';
import { posteriorOf } from '../../../../core/tracing/live/belief/posterior.ts';
import { remediesOf } from '../../../../core/tracing/live/offer/inShort.ts';
import { offerStep } from '../../../../core/tracing/live/offer/offerStep.ts';
import type { FaultModel, TracingCase } from '../../../../core/tracing/live/types.ts';
import type { Cancel } from '../../../../core/tracing/plan/problem/effort.ts';

/**
 * What would follow the step on offer, and what each remedy would cost at this price of a minute (minor units), as the
 * plan counts it. `cancel`: see `offerStep`.
 */
export function planFigures(model: FaultModel, state: TracingCase, perMinuteMinor: number, cancel: Cancel): PlanAhead {
  const { next } = offerStep(model, state, { method: 'rollout', cancel });
  const then = next ? thenSteps(model, state, next, cancel) : [];
  const suspects = suspectsOf(model, posteriorOf(model, state));
  return {
    follows: then.map(({ step, handsOn, waiting }) => ({ step, handsOn: minutes(handsOn), waiting: minutes(waiting) })),
    remedies: remediesOf(model, suspects).map(({ part, p, minutes: cost }) => ({
      part,
      p,
      priceMinor: Math.round(cost * perMinuteMinor),
    })),
  };
}
