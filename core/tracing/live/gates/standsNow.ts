import { knownStep, LOG_READ, stepOf } from '../model/special.ts';
import type { OutcomesByStep } from '../model/usedIds.ts';
import { groupsSeen } from '../readGroups.ts';
import type { FaultModel, LoggedStep, Outcome, Step, TracingCase } from '../types.ts';
import { hasShown } from './shown.ts';

/** How the machine stands on the bench after the last trial: it fails, it works whole, or only with something out or ours in. */
export type MachineState = 'fails' | 'works' | 'works-without';

/** What the last trial at the machine showed; before any, what was seen at the first start. */
export function standsNow(model: FaultModel, tracing: TracingCase): MachineState {
  for (const entry of tracing.log.toReversed()) {
    const known = entry.struck ? null : trialOf(model, entry);
    if (!known) continue;
    if (works(known)) return leavesOut(known.step, entry) ? 'works-without' : 'works';
    if (fails(known)) return 'fails';
  }
  return seenToWork(model, tracing) ? 'works' : 'fails';
}

/**
 * Was it seen to fail on the bench at all, at the first start or since? What is not looked at yet is taken to fail, unless
 * it was told to fail only now and then: nothing is tried on that before it was seen.
 */
export const maySinceHaveFailed = (model: FaultModel, tracing: TracingCase): boolean =>
  (groupsSeen(model, tracing).length === 0 ? !toldNowAndThen(model, tracing) : !seenToWork(model, tracing)) ||
  tracing.log.some((entry) => failsIn(model, entry));

const toldNowAndThen = ({ often }: FaultModel, { told }: TracingCase): boolean =>
  told.rate !== null || often.some(({ id, rate }) => rate !== null && told.often.includes(id));

/** Did a trial at the machine fail in this entry? */
export function failsIn(model: FaultModel, entry: LoggedStep): boolean {
  const known = entry.struck ? null : trialOf(model, entry);
  return known !== null && !works(known) && fails(known);
}

/** Was it seen to fail here for certain, at the first start or since, or does its own log or a thing seen loose say so? */
export const seenToFail = (model: FaultModel, tracing: TracingCase): boolean =>
  (tracing.seen.length > 0 && !seenToWork(model, tracing)) ||
  hasShown(tracing, SEEN_LOOSE) ||
  tracing.log.some((entry) => failsIn(model, entry) || ownLogSays(model, entry));

/** What stands loose is a fault seen by eye, whether the machine failed while it was here or not. */
export const SEEN_LOOSE: OutcomesByStep = { 'look-inside': ['plug-off', 'card-loose', 'cooler-loose'] };

function ownLogSays(model: FaultModel, { struck, step: id, outcome }: LoggedStep): boolean {
  if (struck || id !== LOG_READ) return false;
  const step = stepOf(model, LOG_READ);
  return step.outcomes[step.normal]?.id !== outcome;
}

function seenToWork(model: FaultModel, tracing: TracingCase): boolean {
  const groups = groupsSeen(model, tracing);
  return groups.length > 0 && groups.every((group) => group === 'not-shown');
}

type Trial = { readonly step: Step; readonly outcome: Outcome };

const works = ({ step, outcome }: Trial): boolean =>
  outcome.meaning.means === 'works' || (step.kind === 'load' && outcome.id === step.outcomes[step.normal]?.id);

const fails = ({ step, outcome }: Trial): boolean => outcome.meaning.means !== 'finding' || step.kind === 'load';

/** What was out for the look is not shown to work, whether it was put back since or not. */
const leavesOut = (step: Step, entry: LoggedStep): boolean => entry.leftOut.length > 0 || step.takesOut.length > 0;

/** A logged step that starts the owner's machine and could show its fault. */
function trialOf(model: FaultModel, entry: LoggedStep): Trial | null {
  const step = knownStep(model, entry.step);
  const outcome = step?.outcomes.find((one) => one.id === entry.outcome);
  return step && outcome && step.onRig === null && (step.exposure !== null || outcome.meaning.means === 'works')
    ? { step, outcome }
    : null;
}
