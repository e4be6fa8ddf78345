import type { Bench } from './bench.ts';
import { clearlyLess } from './problem.ts';
import type { Stand } from './stand.ts';

/** A step counts as telling something while one of its outcomes lies between these chances. */
const SURE_NOT = 0.001;
const SURE = 0.999;

/**
 * The trade's rule of thumb (common practice, no source): of the steps that can still change the belief or cure, the
 * one with the least minutes now; processor and board swaps last. -1 when no such step is left.
 */
export function easiestStep(bench: Bench, stand: Stand): number {
  let best = -1;
  let least = 0;
  let late = false;
  for (let s = 0; s < bench.stepCount; s++) {
    const step = bench.problem.steps[s];
    if (!step || stand.done[s] === 1 || !isWorthDoing(bench, stand, s)) continue;
    const minutes = minutesNow(bench, stand, s);
    const sooner = step.late === late ? clearlyLess(minutes, least) : late;
    if (best < 0 || sooner) {
      best = s;
      least = minutes;
      late = step.late;
    }
  }
  return best;
}

/** Can the step still change the belief, or cure? */
function isWorthDoing(bench: Bench, stand: Stand, s: number): boolean {
  const step = bench.problem.steps[s];
  if (!step) return false;
  let curing = 0;
  for (let o = 0; o < step.outcomes.length; o++) {
    const chance = chanceOf(bench, stand, s, o);
    if (chance >= SURE_NOT && chance <= SURE) return true;
    if (step.cures[o]) curing += chance;
  }
  return curing >= SURE_NOT;
}

/** P(outcome) of a step now. */
export function chanceOf(bench: Bench, stand: Stand, step: number, outcome: number): number {
  const row = bench.problem.steps[step]?.chance[outcome];
  if (!row || stand.mass <= 0) return 0;
  let mass = 0;
  for (let f = 0; f < bench.faultCount; f++) mass += (stand.belief[f] as number) * (row[f] as number);
  return mass / stand.mass;
}

/** What doing the step costs now: minutes, opening and closing, and the harm expected. */
export function minutesNow(bench: Bench, stand: Stand, s: number): number {
  const harm = bench.problem.steps[s]?.harm;
  let minutes = (bench.minutes[s] as number) + bench.arrangements.move(stand.arrangement, s).minutes;
  if (harm) {
    for (let f = 0; f < bench.faultCount; f++)
      minutes += ((stand.belief[f] as number) / stand.mass) * (harm[f] as number);
  }
  return minutes;
}
