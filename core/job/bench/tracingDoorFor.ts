import { minutes } from '../../time.ts';
import type { LiveTracing } from '../../tracing/live/api.ts';
import type { FaultModel } from '../../tracing/live/types.ts';
import { tracingCase } from './tracingCase.ts';
import type { JobView, TracingDoor } from './tracingDoor.ts';

/** A fault below this chance is no longer a suspect that a loaner was exposed to. */
const STILL_SUSPECT = 0.01;

/** The job's door to the tracing engine, with one fault model behind it. */
export function tracingDoorFor(live: LiveTracing, model: FaultModel): TracingDoor {
  const find = (id: string) => model.steps.find((step) => step.id === id);
  const caseOf = (view: JobView) => tracingCase(view);
  return {
    rules: (id) => {
      const step = find(id);
      return step
        ? {
            id,
            handsOn: minutes(step.handsOn),
            outcomes: step.outcomes.map((outcome) => outcome.id),
            needs: step.needs,
            handling: step.handling,
            circuitsOut: step.takesOut,
          }
        : null;
    },
    gates: (view, step, loaner) => {
      const offer = live.offerStep(model, caseOf(view), { method: 'ratio' });
      const standing = loaner ? view.parts.get(loaner)?.standing.is : undefined;
      return offer.notOffered.flatMap((one) => {
        if (one.step !== step || one.why.is !== 'gate') return [];
        const { gate } = one.why;
        const rule = model.gates.find((known) => known.id === gate);
        const excused = rule?.unless.some((good) => good === standing) ?? false;
        return excused ? [] : [{ gate, first: one.why.firstDo }];
      });
    },
    suspects: (view) =>
      live
        .belief(model, caseOf(view))
        .suspects.filter((suspect) => suspect.p >= STILL_SUSPECT)
        .map((suspect) => suspect.fault),
    harms: (fault, kind) =>
      model.steps.some((step) =>
        step.harm.some((harm) => harm.fault === fault && harm.part === kind && harm.chance > 0),
      ),
    verdict: (view) => live.verdictAfter(model, caseOf(view)),
    differ: (told, seen) => live.compareToldSeen(model, told, seen).differ,
  };
}
