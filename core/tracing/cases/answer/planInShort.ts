import { suspectsOf } from '../../live/belief/belief.ts';
import { posteriorOf } from '../../live/belief/posterior.ts';
import { blamed, type InShort, inShort, type Remedy, remediesOf } from '../../live/offer/inShort.ts';
import { offerStep } from '../../live/offer/offerStep.ts';
import type { FaultModel, StepId } from '../../live/types.ts';
import { toTracing } from '../bench/toTracing.ts';
import { USUAL } from '../bench/usual.ts';
import type { CaseLine } from '../form/caseLine.ts';
import { thenSteps } from './thenSteps.ts';

/** What is planned: three steps as they would follow, each by the likeliest outcome of the one before. */
export type PlanInShort = InShort & {
  readonly remedies: readonly Remedy[];
  readonly plan: readonly { readonly step: StepId; readonly minutes: number }[];
  /** Bench minutes expected until it is found and proved, from here; and what one of them costs, in whole units of money. */
  readonly expected: number;
  readonly perMinute: number;
};

/** A case's tracing in one sentence, with the plan behind it; null where the line is no case, or it has ended. */
export function planInShort(model: FaultModel, line: CaseLine): PlanInShort | null {
  const bench = toTracing(model, line);
  if ('is' in bench) return null;
  const { tracing } = bench;
  const offer = offerStep(model, tracing, { method: 'rollout' });
  if (!offer.next) return null;
  const steps = [offer.next, ...thenSteps(model, tracing, offer.next)];
  const suspects = suspectsOf(model, posteriorOf(model, tracing));
  return {
    ...inShort(offer, blamed(model, suspects)),
    remedies: remediesOf(model, suspects),
    plan: steps.map(({ step, handsOn }) => ({ step, minutes: handsOn })),
    expected: offer.expectedMinutes,
    perMinute: USUAL.money.perMinute,
  };
}
