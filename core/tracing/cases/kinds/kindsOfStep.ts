import { ALIASES } from '../../live/renamed/aliases.ts';
import { deedsOf } from '../../live/safety/deeds.ts';
import type { FaultModel, Step, TracingCase } from '../../live/types.ts';

/** What a step does to this machine as it stands now, in the kinds of the bench cases; with `:part` where a part is named. */
export const kindsOfStep = (model: FaultModel, tracing: TracingCase, step: Step): ReadonlySet<string> => {
  const listed = ALIASES.kinds[step.id];
  return listed ? new Set(listed) : deedsOf(model, tracing, step);
};
