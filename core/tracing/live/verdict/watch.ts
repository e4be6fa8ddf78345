import { at, nth } from '../../../figures/rows.ts';
import type { Condition } from '../belief/condition.ts';
import type { Posterior } from '../belief/posterior.ts';
import { failsIn, seenToFail } from '../gates/standsNow.ts';
import { faultNumber } from '../model/special.ts';
import type { FaultModel, LoggedStep, Suspect, TracingCase } from '../types.ts';

/** What a fault that comes and goes may have left as its chance to keep away from a watch: 95 in 100 sure, as for "rate × time = 3". */
export const HIDDEN_AT_MOST = 0.05;
/** A handling that may have mended less than this is not what the watch is about. Common practice, no source. */
const MAY_HAVE_MENDED = 0.05;
/** More likely than not intermittent: one good trial is then no proof of a mend. */
const MOSTLY = 0.5;

/** What was watched since something was mended. */
export type Watch = {
  /** Hours that it ran, under load or idle. */
  readonly hours: number;
  /** P(all that was seen since | the fault still there), by fault × 2, + 1 when it comes and goes. */
  readonly quiet: Float64Array;
  readonly entries: readonly LoggedStep[];
};

/**
 * The quiet trials and normal findings since the last handling that may have mended something, its own trial counted in.
 * Null when nothing was mended, when the machine was not seen to fail here before, nor its own log said so, or when it
 * failed since.
 */
export function watchSince(
  model: FaultModel,
  tracing: TracingCase,
  { conditions, entries }: Posterior,
  suspects: readonly Suspect[],
): Watch | null {
  const mended = suspects.filter((one) => one.mended >= MAY_HAVE_MENDED);
  const mending = conditions.findLastIndex((one) => mended.some(({ fault }) => mendsIn(model, one, fault) > 0));
  const first = entries[mending];
  if (!first) return null;
  const before = tracing.log.slice(0, tracing.log.indexOf(first));
  if (!seenToFail(model, { ...tracing, log: before })) return null;
  const byPuttingBack = mended.every(({ fault }) => (nth(conditions, mending).mends[indexOf(model, fault)] ?? 0) === 0);
  const since = byPuttingBack ? mending + 1 : mending;
  if (entries.slice(since).some((entry) => failsIn(model, entry))) return null;
  const quiet = new Float64Array(model.faults.length * 2).fill(1);
  let hours = 0;
  const watched: LoggedStep[] = [];
  for (let k = since; k < conditions.length; k++) {
    const condition = nth(conditions, k);
    const step = nth(model.steps, condition.step);
    if (!condition.isNormal || step.onRig !== null) continue;
    for (let place = 0; place < quiet.length; place++) quiet[place] = at(quiet, place) * at(condition.seen, place);
    hours += (step.exposure?.loadHours ?? 0) + (step.exposure?.idleHours ?? 0);
    watched.push(nth(entries, k));
  }
  return { hours, quiet, entries: watched };
}

/** Had what was mended still been there, whichever it was: the chance that all of the watch would have been quiet. */
export function hiddenChance(model: FaultModel, { quiet }: Watch, suspects: readonly Suspect[]): number {
  let [all, hidden] = [0, 0];
  for (const { fault, mended, comesAndGoes } of suspects) {
    const f = indexOf(model, fault);
    all += mended;
    hidden += mended * ((1 - comesAndGoes) * at(quiet, f * 2) + comesAndGoes * at(quiet, f * 2 + 1));
  }
  return all > 0 ? hidden / all : 1;
}

/** Does what was mended mostly come and go? */
export function mostlyIntermittent(suspects: readonly Suspect[]): boolean {
  const mended = suspects.reduce((sum, one) => sum + one.mended, 0);
  return suspects.reduce((sum, one) => sum + one.mended * one.comesAndGoes, 0) >= MOSTLY * mended;
}

const indexOf = (model: FaultModel, fault: string): number => faultNumber(model, fault);

function mendsIn(model: FaultModel, { mends, mendsAfter }: Condition, fault: string): number {
  const f = indexOf(model, fault);
  return (mends[f] ?? 0) + (mendsAfter[f] ?? 0);
}
