import type { Hypothesis } from '../../live/belief/hypotheses.ts';
import { inPlace } from '../../live/belief/inPlace.ts';
import { outlook } from '../../live/belief/outlook.ts';
import { FIRST, SECOND } from '../../live/belief/presence.ts';
import { priorOf } from '../../live/belief/prior.ts';
import { lookMask } from '../../live/configuration.ts';
import { stepNumber } from '../../live/model/special.ts';
import type { FaultModel, Step, TracingCase } from '../../live/types.ts';
import type { BenchCase } from '../form/benchCase.ts';

/** What is wrong with a case's machine as the model can carry it; null where the model has nothing like it. */
export function truthOf(model: FaultModel, { truth }: BenchCase): Hypothesis | null {
  const ids = truth.faults.map((one) => (typeof one === 'string' ? one : (one.like ?? '')));
  const [first, second] = ids.map((id) => model.faultIndex.get(id) ?? null);
  if (first === undefined || first === null || second === null) return null;
  const mode = truth.comesAndGoes ? 1 : 0;
  return { first, firstMode: mode, second: second ?? -1, secondMode: mode, prior: 1 };
}

/** The likeliest outcome of a step on a machine with this wrong with it, as it stands now, nothing mended by the step. */
export function likeliestOutcome(model: FaultModel, tracing: TracingCase, step: Step, truth: Hypothesis): string {
  const look = lookMask(model, tracing.log, step);
  const s = stepNumber(model, step.id);
  const none = new Float64Array(model.faults.length);
  const presence = truth.second >= 0 ? FIRST | SECOND : FIRST;
  let best = { id: '', p: -1 };
  for (const [o, condition] of inPlace(model, priorOf(model, tracing), s, look).entries()) {
    const p = outlook(truth, presence, { ...condition, mends: none });
    if (p > best.p) best = { id: step.outcomes[o]?.id ?? '', p };
  }
  return best.id;
}

/** The outcome that says "no different"; else the normal one. */
export const unchanged = (step: Step): string =>
  step.outcomes.find(({ meaning }) => meaning.means === 'same' || meaning.means === 'fails-again')?.id ??
  step.outcomes[step.normal]?.id ??
  '';

/** What a sound machine shows: it works, else the step's normal outcome. */
export const onSoundMachine = (step: Step): string =>
  step.outcomes.find(({ meaning }) => meaning.means === 'works')?.id ?? step.outcomes[step.normal]?.id ?? '';
