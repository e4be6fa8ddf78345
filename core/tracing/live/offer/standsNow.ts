import { readGroups } from '../readGroups.ts';
import type { FaultModel, LoggedStep, Outcome, Step, TracingCase } from '../types.ts';

/** How the machine stands on the bench after the last trial: it fails, it works whole, or only with something out or ours in. */
export type Stands = 'fails' | 'works' | 'works-without';

/** What the last trial at the machine showed; before any, what was seen at the first start. */
export function standsNow(model: FaultModel, tracing: TracingCase): Stands {
  for (const entry of tracing.log.toReversed()) {
    const known = entry.struck ? null : trialOf(model, entry);
    if (!known) continue;
    const { step, outcome } = known;
    const works =
      outcome.meaning.means === 'works' || (step.kind === 'load' && outcome.id === step.outcomes[step.normal]?.id);
    if (works) return leavesOut(step, entry) ? 'works-without' : 'works';
    if (outcome.meaning.means !== 'finding' || step.kind === 'load') return 'fails';
  }
  const groups = readGroups(model, tracing.seen);
  return groups.length > 0 && groups.every((group) => group === 'NF') ? 'works' : 'fails';
}

/** What was out for the look is not shown to work, whether it was put back since or not. */
const leavesOut = (step: Step, entry: LoggedStep): boolean => entry.leftOut.length > 0 || step.takesOut.length > 0;

/** A logged step that starts the owner's machine and could show its fault. */
function trialOf(model: FaultModel, entry: LoggedStep): { readonly step: Step; readonly outcome: Outcome } | null {
  const step = model.steps[model.stepIndex.get(entry.step) ?? -1];
  const outcome = step?.outcomes.find((one) => one.id === entry.outcome);
  return step && outcome && step.onRig === null && (step.exposure !== null || outcome.meaning.means === 'works')
    ? { step, outcome }
    : null;
}
