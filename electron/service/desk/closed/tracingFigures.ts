import type { TracingSheet } from '../../../../core/contract/screens.ts';
import { cautionsAt } from '../../../../core/tracing/live/gates/cautionsAt.ts';
import { liveTracing } from '../../../../core/tracing/live/liveTracing.ts';
import type { FaultModel, Method, TracingCase } from '../../../../core/tracing/live/types.ts';
import type { Cancel } from '../../../../core/tracing/plan/problem/effort.ts';

/** What the engine says of a bench state: suspects before and after the last step, the step on offer and why, the verdict. `cancel`: see `offerStep`. */
export function tracingFigures(model: FaultModel, state: TracingCase, method: Method, cancel?: Cancel): TracingSheet {
  const belief = liveTracing.belief(model, state);
  const before = liveTracing.belief(model, { ...state, log: state.log.slice(0, -1) });
  const toldSeen = liveTracing.compareToldSeen(model, state.told.symptoms, state.seen);
  const known = (fault: string) => model.faults.find((one) => one.id === fault);
  return {
    belief: { contradiction: belief.contradiction, droppedMass: belief.droppedMass },
    suspects: belief.suspects.map((suspect) => ({
      ...suspect,
      part: known(suspect.fault)?.part ?? 'none',
      oneOf: known(suspect.fault)?.oneOf ?? null,
    })),
    before: before.suspects,
    offer: liveTracing.offerStep(model, state, cancel ? { method, cancel } : { method }),
    handling: Object.fromEntries(
      model.steps.map((step) => [
        step.id,
        {
          handling: step.handling,
          outcomes: step.outcomes.map((outcome) => outcome.id),
          places: step.places,
          normal: step.outcomes[step.normal]?.id ?? '',
          needs: step.needs,
          handsOn: step.handsOn,
          waiting: step.waiting,
          cautions: cautionsAt(model, state, step),
        },
      ]),
    ),
    bench: model.bench,
    verdict: liveTracing.verdictAfter(model, state),
    toldSeen: { agree: toldSeen.agree, onlyTold: toldSeen.onlyTold, onlySeen: toldSeen.onlySeen },
  };
}
