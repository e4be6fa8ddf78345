import { standsNow } from '../gates/standsNow.ts';
import type { FaultModel, Step, Suspect, TracingCase } from '../types.ts';

/** Handlings that mend: done again on what runs, nobody would know any more which of them it was. */
const MENDING: readonly Step['kind'][] = ['software', 'reseat', 'clean', 'setting', 'sweep'];
/** It is taken for mended from here on. Common practice, no source. */
const LIKELY_MENDED = 0.5;

/**
 * What was mended and runs since is watched, not mended once more: is this step left alone now?
 */
export function leftAlone(
  model: FaultModel,
  tracing: TracingCase,
  suspects: readonly Suspect[],
): (step: Step) => boolean {
  const mended = suspects.reduce((sum, one) => sum + one.mended, 0);
  const runs = mended >= LIKELY_MENDED && standsNow(model, tracing) === 'works';
  return (step) => runs && MENDING.includes(step.kind);
}
