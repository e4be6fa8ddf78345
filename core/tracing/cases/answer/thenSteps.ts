import { WATCH_START } from '../../live/model/special.ts';
import { offerStep } from '../../live/offer/offerStep.ts';
import { readGroups } from '../../live/readGroups.ts';
import type { FaultModel, StepView, TracingCase } from '../../live/types.ts';
import type { Cancel } from '../../plan/problem/effort.ts';
import { afterEntry } from '../bench/logged.ts';

/** The steps as they would be proposed after the likeliest outcome of this one, and after that one's likeliest. `cancel`: see `offerStep`. */
export function thenSteps(
  model: FaultModel,
  tracing: TracingCase,
  next: StepView,
  cancel?: Cancel,
): readonly StepView[] {
  const steps: StepView[] = [];
  let [now, view]: [TracingCase, StepView | null] = [tracing, next];
  while (view && steps.length < 2) {
    const likeliest = view.outcomes.toSorted((a, b) => b.p - a.p)[0];
    const after = likeliest && afterEntry(model, now, `${view.step}:${likeliest.outcome}`);
    if (!after || 'is' in after) break;
    now = view.step === WATCH_START ? { ...after, seen: seenThen(model, after, likeliest.outcome) } : after;
    view = offerStep(model, now, { method: 'rollout', ...(cancel && { cancel }) }).next;
    if (view) steps.push(view);
  }
  return steps;
}

/** What would be seen if the first start came to this: what was told of that kind, else any term of it. */
function seenThen(model: FaultModel, { told }: TracingCase, outcome: string): readonly string[] {
  const shows = (term: string) => readGroups(model, [term]).some((group) => group === outcome);
  const asTold = told.symptoms.filter(shows);
  return asTold.length > 0
    ? asTold
    : model.symptoms
        .filter(({ id }) => shows(id))
        .slice(0, 1)
        .map(({ id }) => id);
}
