import { assemblyOf, opensOf } from '../../live/assembly.ts';
import { ALIASES } from '../../live/renamed/aliases.ts';
import { deedsOf } from '../../live/safety/deeds.ts';
import type { FaultModel, StateId, Step, TracingCase } from '../../live/types.ts';
import type { Kind } from './kindNames.ts';

const STATES: Readonly<Record<StateId, Kind>> = {
  cpu: 'processor-out',
  cooler: 'cooler-off',
  board: 'board-out',
  supply: 'supply-out',
  card: 'card-out',
  panel: 'panel-open',
};

/** What a step does to this machine as it stands now, in the kinds of the bench cases; with `:part` where a part is named. */
export function kindsOfStep(model: FaultModel, tracing: TracingCase, step: Step): ReadonlySet<string> {
  const listed = ALIASES.kinds[step.id];
  if (listed) return new Set(listed);
  return new Set<string>([
    ...deedsOf(model, tracing, step),
    ...opensOf(assemblyOf(model, tracing.switches), step).flatMap((state) => STATES[state] ?? []),
  ]);
}
