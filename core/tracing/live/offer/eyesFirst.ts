import { assemblyOf, opensOf } from '../assembly.ts';
import type { FaultModel, Step, TracingCase } from '../types.ts';
import { timesDone } from './gates.ts';
import { lifeNow } from './life.ts';

const LOOK = 'look-inside';
const PANEL = 'panel';

/**
 * Once a machine that does not run as far as its system is opened, the eyes come before the hands, whatever the plan opens
 * it for: the look inside, where it can be done and was not; else the step itself. `at`: places in `steps`, negative: none.
 */
export function eyesFirst(model: FaultModel, tracing: TracingCase, steps: readonly Step[], at: number): number {
  const step = steps[at];
  const place = steps.findIndex(({ id }) => id === LOOK);
  const look = steps[place];
  if (!step || !look || timesDone(model, tracing, look) > 0 || lifeNow(model, tracing) === 'system') return at;
  return opensOf(assemblyOf(model, tracing.switches), step).includes(PANEL) ? place : at;
}
