import { assemblyOf, opensOf } from '../assembly.ts';
import type { FaultModel, StateId, Step, Suspect, TracingCase } from '../types.ts';
import { timesDone } from './gates.ts';
import { lifeNow } from './life.ts';

const LOOK_MAINS = 'look-mains';
const MAINS_OFF = 'mains-off';
const PANEL = 'panel';
/** From here on a switch or cord that is off is thought of before a screw is turned. Common practice, no source. */
const WORTH_A_GLANCE = 0.05;

/**
 * Once a machine that does not run as far as its system is opened, the eyes come before the hands, whatever the plan opens
 * it for or opened it already: the look at all places in one go, where it can be done and was not; else the step itself. Before the first screw
 * comes the glance at cord and switch, where they may be all that is wrong. `at`: places in `steps`, negative: none; `open`:
 * the states that stand open.
 */
export function eyesFirst(
  model: FaultModel,
  tracing: TracingCase,
  steps: readonly Step[],
  at: number,
  suspects: readonly Suspect[],
  open: readonly StateId[],
): number {
  const step = steps[at];
  if (!step) return at;
  const isOpen = open.includes(PANEL) || opensOf(assemblyOf(model, tracing.switches), step).includes(PANEL);
  if (!isOpen || lifeNow(model, tracing) === 'system') return at;
  const look = notDone(model, tracing, steps, ({ places }) => places.length > 0);
  if (look < 0) return at;
  if (open.includes(PANEL)) return look;
  const glance = notDone(model, tracing, steps, ({ id }) => id === LOOK_MAINS);
  const off = suspects.find(({ fault }) => fault === MAINS_OFF)?.p ?? 0;
  return glance >= 0 && off >= WORTH_A_GLANCE ? glance : look;
}

const notDone = (
  model: FaultModel,
  tracing: TracingCase,
  steps: readonly Step[],
  is: (step: Step) => boolean,
): number => steps.findIndex((step) => is(step) && timesDone(model, tracing, step) === 0);
