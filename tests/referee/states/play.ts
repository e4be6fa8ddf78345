import { finalise, prng } from '../../../core/figures/prng.ts';
import type { CaseLine } from '../../../core/tracing/cases/form/caseLine.ts';
import type { FaultModel } from '../../../core/tracing/live/types.ts';
import { type Draw, drawFrom, drawMachine } from './drawMachine.ts';
import { add, type Progress } from './tally.ts';
import type { Position } from './walk.ts';

/** A way through one machine, position by position. */
export type Way = (model: FaultModel, line: CaseLine, draw: Draw) => Iterable<Position>;

/**
 * Judges positions of drawn machines until `states` are reached; the last machine is walked to its end. The same seed
 * draws the same machines, and a run goes on where `progress` stands.
 * @param way How a machine is gone through: `walk` by chance, `planned` as the planner proposes.
 * @param after Told after each machine, to keep what was found.
 */
export function play(
  model: FaultModel,
  progress: Progress,
  states: number,
  way: Way,
  after: () => void = () => undefined,
): void {
  while (progress.states < states) {
    const machineNo = progress.share.at + progress.machines * progress.share.of;
    const draw = drawFrom(prng(finalise(progress.seed) ^ finalise(machineNo + 1)));
    const line = drawMachine(draw, `drawn ${machineNo}`);
    const { told, seen, machine, agreed } = line;
    const stands = JSON.stringify({ told: told.symptoms, changed: told.changed, seen, machine, agreed });
    for (const position of way(model, line, draw)) add(progress, position, stands);
    progress.machines++;
    after();
  }
}
