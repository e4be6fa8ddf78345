import type { ThingKind } from '../../../custody/part.ts';
import { addAt } from '../../../figures/rows.ts';
import { DAY_MINUTES } from '../../../time.ts';
import { lookMask } from '../configuration.ts';
import { faultNumber, knownStep, PUT_BACK, stepOf } from '../model/special.ts';
import type { FaultModel, Step, StepHarm, TracingCase } from '../types.ts';
import { atStakeMinutes, oursMinutes, ownersMinutes } from './values.ts';

/** Minutes up to so long, and what each counts. Common practice, no source. */
const BANDS = [
  [3, 0.8],
  [30, 0.3],
  [120, 0.1],
  [Number.POSITIVE_INFINITY, 0.02],
] as const;
/** Past closing time nobody waits: no minute counts more than this. Common practice, no source. */
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

/**
 * What waiting counts against the promise, in bench minutes. One night costs no day of its own while the promised day is
 * not passed: the bench is shut meanwhile. Each further day counts one, and each day past the promised one counts one more.
 */
export function delayMinutes(
  minutes: number,
  { untilClosing, delay }: Pick<TracingCase, 'untilClosing' | 'delay'>,
): number {
  const nights =
    untilClosing === null
      ? Math.floor(minutes / DAY_MINUTES)
      : minutes <= untilClosing
        ? 0
        : 1 + Math.floor((minutes - untilClosing) / DAY_MINUTES);
  const late = delay.daysLeft === null ? 0 : Math.max(0, nights - Math.max(0, delay.daysLeft));
  return delay.dayMinutes * (Math.max(0, nights - 1) + late);
}

/** Kinds of part that a machine may be known to have none of. */
const isMissing = ({ machine }: TracingCase, part: ThingKind): boolean =>
  (part === 'card' && machine.card === false) || (part === 'drive' && machine.drives === 0);

/** The harm that a step can do as the machine stands: what carries the fault, and what of the owner's it would hurt, is in. */
export function harmNow(model: FaultModel, tracing: TracingCase, step: Step): readonly StepHarm[] {
  if (step.harm.length === 0) return step.harm;
  const { look } = lookMask(model, tracing.log, step);
  return step.harm.filter(
    ({ meets, whose, part }) => (meets & look) === 0 && !(whose === 'owner' && isMissing(tracing, part)),
  );
}

/** Minutes charged when a fault is the truth and the step is done: chance of hurting a part times what that part is worth. */
export function harmOf(model: FaultModel, tracing: TracingCase, step: Step): Float64Array | undefined {
  const can = harmNow(model, tracing, step);
  if (can.length === 0) return undefined;
  const harm = new Float64Array(model.faults.length);
  const values = new Map<string, number>();
  for (const { fault, chance, part, whose } of can) {
    const key = `${whose ?? 'ours'} ${part}`;
    const value =
      values.get(key) ?? (whose === 'owner' ? atStakeMinutes(model, tracing, part) : oursMinutes(model, tracing, part));
    values.set(key, value);
    addAt(harm, faultNumber(model, fault), chance * value);
  }
  return harm;
}

/**
 * Minutes with hands on it. Putting back costs what taking out cost: the board that came out in half an hour goes in again
 * in no less, with its cooler and paste.
 */
export function handsOnOf(model: FaultModel, { log }: Pick<TracingCase, 'log'>, step: Step): number {
  if (step.id !== PUT_BACK) return step.handsOn;
  const took = log.findLast((entry) => {
    const done = entry.struck ? undefined : knownStep(model, entry.step);
    const outcome = done?.outcomes.find(({ id }) => id === entry.outcome);
    return done !== undefined && done.takesOut.length > 0 && outcome?.meaning.means === 'works';
  });
  return took ? Math.max(step.handsOn, stepOf(model, took.step).handsOn) : step.handsOn;
}

/** What a step costs whatever the fault is: hands, weighed waiting, the days it takes, and its own slip. */
export const ownMinutes = (model: FaultModel, tracing: TracingCase, step: Step): number =>
  handsOnOf(model, tracing, step) +
  weighedWaiting(step.waiting, tracing.untilClosing) +
  delayMinutes(step.waiting, tracing) +
  (step.slip ? step.slip.chance * ownersMinutes(model, tracing, step.slip.part) : 0);
