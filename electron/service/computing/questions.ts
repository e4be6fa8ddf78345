import type { PlanAhead, TracingSheet } from '../../../core/contract/screens.ts';
import { estimate } from '../../../core/labour/estimate.ts';
import type { EstimateAsked, EstimateCancelled, LabourEstimate } from '../../../core/labour/types.ts';
import type { Method, TracingCase } from '../../../core/tracing/live/types.ts';
import { planFigures } from '../desk/closed/planFigures.ts';
import { tracingFigures } from '../desk/closed/tracingFigures.ts';
import { keepingModel } from '../keepingModel.ts';
import { keepingTraces } from './keepingTraces.ts';
import type { ModelOfShop } from './ownModel.ts';

/** What takes too long for the thread that answers the screens. */
export type ToBeComputed =
  | { readonly ask: 'estimate'; readonly own: ModelOfShop; readonly of: EstimateAsked }
  | { readonly ask: 'plan'; readonly own: ModelOfShop; readonly of: TracingCase; readonly perMinuteMinor: number }
  | { readonly ask: 'tracing'; readonly own: ModelOfShop; readonly of: TracingCase; readonly method: Method };

export type AnswerTo<Q extends ToBeComputed> = Q['ask'] extends 'estimate'
  ? LabourEstimate | EstimateCancelled
  : Q['ask'] extends 'plan'
    ? PlanAhead
    : TracingSheet;
export type ComputedAnswer = LabourEstimate | EstimateCancelled | PlanAhead | TracingSheet;

/** Answers one question; the model is made once for each edition of it. `cancelled` is looked at now and then. */
export function answering(): (question: ToBeComputed, cancelled: () => boolean) => ComputedAnswer {
  const modelFor = keepingModel();
  const tracesFor = keepingTraces();
  return (question, cancelled) => {
    const model = modelFor(question.own);
    const cancel = {
      get aborted() {
        return cancelled();
      },
    };
    if (question.ask === 'tracing') return tracingFigures(model, question.of, question.method, cancel);
    if (question.ask === 'plan') return planFigures(model, question.of, question.perMinuteMinor, cancel);
    return estimate({ ...question.of, model, cancelled }, tracesFor(question.own, model, question.of));
  };
}
