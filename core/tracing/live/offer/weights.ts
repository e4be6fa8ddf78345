import type { FaultModel, Loaner, Step, TracingCase } from '../types.ts';
import { loanerFor } from './available.ts';

/**
 * What waiting counts by its length: nearly full while one stands beside it, a third while one stays near, little when
 * another machine can be taken up, hardly anything overnight. Common practice, no source.
 */
export function weighedWaiting(minutes: number): number {
  const between = (from: number, to: number) => Math.min(Math.max(minutes - from, 0), to - from);
  return (
    between(0, 3) * 0.8 + between(3, 30) * 0.3 + between(30, 120) * 0.1 + between(120, Number.POSITIVE_INFINITY) * 0.02
  );
}

/** What a borrowed part is worth in bench minutes: price, proving it anew, and the jobs that want it too. */
const valueInMinutes = (loaner: Loaner, perMinuteMinor: number): number =>
  loaner.valueMinor / Math.max(1, perMinuteMinor) + loaner.proveMinutes + loaner.wantedBy * WAIT_OF_A_JOB;

/** Minutes that another job loses while it waits for a loaner: common practice, no source. */
const WAIT_OF_A_JOB = 30;
/** An owner's sound part counts more heavily than the same part of ours. Common practice, no source. */
const OWNERS_PART_MINUTES = 240;

/** Minutes charged when a fault is the truth and the step is done: chance of hurting a part times what that part is worth. */
export function harmOf(model: FaultModel, tracing: TracingCase, step: Step): Float64Array | undefined {
  if (step.harm.length === 0) return undefined;
  const harm = new Float64Array(model.faults.length);
  const borrows = step.handling.borrows;
  const borrowed = borrows && step.harm.some((one) => one.part === borrows) ? loanerFor(tracing, borrows) : null;
  for (const { fault, chance, part } of step.harm) {
    const f = model.faultIndex.get(fault);
    if (f === undefined) continue;
    const value =
      part === borrows && borrowed && 'loaner' in borrowed
        ? valueInMinutes(borrowed.loaner, tracing.money.perMinuteMinor)
        : OWNERS_PART_MINUTES;
    harm[f] = (harm[f] as number) + chance * value;
  }
  return harm;
}

/** What a step costs whatever the fault is: hands, weighed waiting, and its own slip. */
export const ownMinutes = (step: Step): number =>
  step.handsOn + weighedWaiting(step.waiting) + (step.slip ? step.slip.chance * OWNERS_PART_MINUTES : 0);
