import type { ThingKind } from '../../../custody/part.ts';
import { loanerFor } from '../gates/available.ts';
import { DRIVE_IMAGE } from '../model/special.ts';
import type { Fault, FaultModel, TracingCase } from '../types.ts';

/** Minutes that another job loses while it waits for a loaner: common practice, no source. */
const WAIT_OF_A_JOB = 30;
/** Data of the owner's that are on no other carrier: dearer than the drive. Common practice, no source. */
const UNCOPIED_DATA_MINUTES = 960;

const inMinutes = (minor: number, { money }: TracingCase): number => minor / Math.max(1, money.perMinuteMinor);

/** Price to replace a thing whose own value is not known, in bench minutes. */
const standardPrice = (model: FaultModel, kind: ThingKind): number => model.values.parts[kind] ?? 0;

/** What the loaner that would be taken is worth in bench minutes: price, proving it anew, and the jobs that want it too. */
export function oursMinutes(model: FaultModel, tracing: TracingCase, kind: ThingKind): number {
  const found = loanerFor(tracing, kind);
  if ('because' in found) return standardPrice(model, kind) + model.values.proving;
  const { valueMinor, proveMinutes, wantedBy } = found.loaner;
  const price = valueMinor === null ? standardPrice(model, kind) : inMinutes(valueMinor, tracing);
  return price + proveMinutes + wantedBy * WAIT_OF_A_JOB;
}

/** The owner's sound part in bench minutes: its own price where that is known, and proving another, by the heavier weight. */
export function ownersMinutes(model: FaultModel, tracing: TracingCase, kind: ThingKind): number {
  const known: { readonly [kind in ThingKind]?: number } = tracing.machine.valuesMinor;
  const own = known[kind];
  const price = own === undefined ? standardPrice(model, kind) : inMinutes(own, tracing);
  return (price + model.values.proving) * model.values.ownersTimes;
}

/** What of the owner's is at stake, in bench minutes: a drive with all that is on it, until it was copied. */
export function atStakeMinutes(model: FaultModel, tracing: TracingCase, kind: ThingKind): number {
  const copied = tracing.log.some(
    ({ struck, step, outcome }) => !struck && step === DRIVE_IMAGE && (outcome === 'copied' || outcome === 'partly'),
  );
  return ownersMinutes(model, tracing, kind) + (kind === 'drive' && !copied ? UNCOPIED_DATA_MINUTES : 0);
}

/** Minutes to put a fault right once it is found, with the price of the part that it takes. */
export function mendingMinutes(model: FaultModel, fault: Fault): number {
  const prices: { readonly [part: string]: number } = model.values.parts;
  return fault.mendMinutes + (fault.mendedBy === 'part' ? (prices[fault.part] ?? 0) : 0);
}
