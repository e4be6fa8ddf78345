import type { ThingKind } from '../../../custody/part.ts';
import type { FaultModel, Loaner, Step, TracingCase } from '../types.ts';
import { loanerFor } from './available.ts';

/** Minutes up to so long, and what each counts. */
const BANDS = [
  [3, 0.8],
  [30, 0.3],
  [120, 0.1],
  [Number.POSITIVE_INFINITY, 0.02],
] as const;
/** Past closing time nobody waits: no minute counts more than this. */
const AFTER_CLOSING = 0.05;

/**
 * What waiting counts by its length: nearly full while one stands beside it, a third while one stays near, little when
 * another machine can be taken up, hardly anything overnight or past closing time (`untilClosing` minutes away; null when
 * it does not matter). Common practice, no source.
 */
export function weighedWaiting(minutes: number, untilClosing: number | null = null): number {
  const open = Math.min(minutes, untilClosing ?? minutes);
  let from = 0;
  let counted = 0;
  for (const [to, weight] of BANDS) {
    const within = (end: number) => Math.min(Math.max(end - from, 0), to - from);
    counted += within(open) * weight + (within(minutes) - within(open)) * Math.min(weight, AFTER_CLOSING);
    from = to;
  }
  return counted;
}

/** What a borrowed part is worth in bench minutes: price, proving it anew, and the jobs that want it too. */
const valueInMinutes = (loaner: Loaner, perMinuteMinor: number): number =>
  loaner.valueMinor / Math.max(1, perMinuteMinor) + loaner.proveMinutes + loaner.wantedBy * WAIT_OF_A_JOB;

/** Minutes that another job loses while it waits for a loaner: common practice, no source. */
const WAIT_OF_A_JOB = 30;
/** An owner's sound part counts more heavily than the same part of ours. Common practice, no source. */
const OWNERS_PART_MINUTES = 240;
/** Data of the owner's that are on no other carrier: dearer than the drive. Common practice, no source. */
const UNCOPIED_DATA_MINUTES = 960;

/** What of the owner's is at stake, in bench minutes: a drive with all that is on it, until it was copied. */
function ownersMinutes(tracing: TracingCase, part: ThingKind): number {
  const copied = tracing.log.some(
    ({ struck, step, outcome }) => !struck && step === 'drive-image' && (outcome === 'copied' || outcome === 'partly'),
  );
  return part === 'drive' && !copied ? OWNERS_PART_MINUTES + UNCOPIED_DATA_MINUTES : OWNERS_PART_MINUTES;
}

/** Minutes charged when a fault is the truth and the step is done: chance of hurting a part times what that part is worth. */
export function harmOf(model: FaultModel, tracing: TracingCase, step: Step): Float64Array | undefined {
  if (step.harm.length === 0) return undefined;
  const harm = new Float64Array(model.faults.length);
  const { borrows } = step.handling;
  const found = borrows && step.harm.some((one) => one.part === borrows) ? loanerFor(tracing, borrows) : null;
  const ours =
    found && 'loaner' in found ? valueInMinutes(found.loaner, tracing.money.perMinuteMinor) : OWNERS_PART_MINUTES;
  for (const { fault, chance, part, whose } of step.harm) {
    const f = model.faultIndex.get(fault);
    if (f === undefined) continue;
    const value = whose === 'owner' ? ownersMinutes(tracing, part) : part === borrows ? ours : OWNERS_PART_MINUTES;
    harm[f] = (harm[f] as number) + chance * value;
  }
  return harm;
}

/** What a step costs whatever the fault is: hands, weighed waiting, and its own slip. */
export const ownMinutes = (step: Step, untilClosing: number | null): number =>
  step.handsOn + weighedWaiting(step.waiting, untilClosing) + (step.slip ? step.slip.chance * OWNERS_PART_MINUTES : 0);
