import { drawLogNormal, TWENTIETHS_APART } from '../figures/logNormal.ts';
import type { Prng } from '../figures/prng.ts';
import { nth } from '../figures/rows.ts';
import type { Step } from '../tracing/live/types.ts';
import { drawMinutes } from './tasks/taskTime.ts';
import type { EstimateRequest } from './types.ts';

export type StepTimes = EstimateRequest['stepTimes'];

/** What one run of a tracing took, closing up included, and the fault that it ended with; not ended: handed over. */
export type Traced = { readonly minutes: number; readonly fault: string | null; readonly ended: boolean };

/** Runs of the tracing of one case under one policy. Each history is decided once and kept, for all runs and re-runs. */
export type Traces = {
  readonly run: (stepTimes: StepTimes, random: Prng) => Traced;
  /** Histories met so far. */
  readonly histories: () => number;
};

/** A tracing longer than this many steps is ended: nobody goes on so long without a word. */
export const MOST_TRACED_STEPS = 40;

/** σ of the logarithm of a step's hands-on minutes where nothing else is known of it: 90 % between half and double. Common practice, no source. */
const STEP_SIGMA = Math.log(2 / 0.5) / TWENTIETHS_APART;

/** Hands-on minutes of a step this time: by the shop's own times where they are known. */
export function stepMinutes(step: Step, times: StepTimes, random: Prng): number {
  const own = times[step.id];
  return own ? drawMinutes(own, random) : step.handsOn * drawLogNormal({ mu: 0, sigma: STEP_SIGMA }, random);
}

/** An index drawn by these chances; the last one where rounding leaves a little over. */
export function draw(chances: ArrayLike<number>, random: Prng): number {
  let left = random.next();
  for (let at = 0; at < chances.length; at++) {
    left -= nth(chances, at);
    if (left < 0) return at;
  }
  return chances.length - 1;
}
