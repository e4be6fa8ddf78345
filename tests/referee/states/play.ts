import { finalise, prng } from '../../../core/figures/prng.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import { drawFrom, drawMachine } from './drawMachine.ts';
import { add, type Progress } from './tally.ts';
import { walk } from './walk.ts';

/**
 * Judges positions of drawn machines until `states` are reached; the last machine is walked to its end. The same seed
 * draws the same machines, and a run goes on where `progress` stands.
 * @param after Told after each machine, to keep what was found.
 */
export function play(model: FaultModel, progress: Progress, states: number, after: () => void = () => undefined): void {
  while (progress.states < states) {
    const draw = drawFrom(prng(finalise(progress.seed) ^ finalise(progress.machines + 1)));
    const line = drawMachine(draw, `drawn ${progress.machines}`);
    const { told, seen, machine, agreed } = line;
    const stands = JSON.stringify({ told: told.symptoms, changed: told.changed, seen, machine, agreed });
    for (const position of walk(model, line, draw)) add(progress, position, stands);
    progress.machines++;
    after();
  }
}
