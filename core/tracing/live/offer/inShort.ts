import { mendingMinutes } from '../problem/values.ts';
import type { FaultId, FaultModel, StepId, StepOffer, Suspect } from '../types.ts';
import { faultOf } from '../verdict/blame.ts';
import { COUNTED_ON } from './settling.ts';

/** A suspect with what would be paid for were it the one: a part, or work at what is no part. */
type Blamed = Pick<Suspect, 'fault' | 'p'> & { readonly part: string };

/** The state of a tracing in one sentence: what is likeliest at fault, and the step that would prove it at the least minutes. */
export type InShort = {
  readonly likeliest: { readonly part: string; readonly p: number } | null;
  readonly proof: { readonly step: StepId; readonly minutes: number } | null;
};

/** What the owner would pay for, with its chance and its cost in bench minutes. */
export type Remedy = { readonly part: string; readonly p: number; readonly minutes: number };

/** A remedy less likely than this is not told to anybody: below one in twenty it only worries. Common practice, no source. */
const TOLD_FROM = 0.05;

/** What is likeliest, suspects of one part taken together, and the cheapest of the steps on offer that would end it there. */
export function inShort({ next, others }: StepOffer, suspects: readonly Blamed[]): InShort {
  const likeliest = byPart(suspects)[0] ?? null;
  const partOf = new Map(suspects.map(({ fault, part }) => [fault, part]));
  const isAbout = (fault: FaultId | undefined) => fault !== undefined && partOf.get(fault) === likeliest?.part;
  const proof = [...(next ? [next] : []), ...others]
    .filter(({ outcomes }) =>
      outcomes.some(({ ends, p, leaves }) => ends && p >= COUNTED_ON && isAbout(leaves[0]?.fault)),
    )
    .toSorted((a, b) => a.handsOn - b.handsOn)[0];
  return { likeliest, proof: proof ? { step: proof.step, minutes: proof.handsOn } : null };
}

function byPart(suspects: readonly Blamed[]): readonly { readonly part: string; readonly p: number }[] {
  const chances = new Map<string, number>();
  for (const { part, p } of suspects) chances.set(part, (chances.get(part) ?? 0) + p);
  // Two faults at once count for both: no chance is above one.
  return [...chances].map(([part, p]) => ({ part, p: Math.min(1, p) })).toSorted((a, b) => b.p - a.p);
}

/** Suspects with what they would be paid as. */
export const blamed = (model: FaultModel, suspects: readonly Suspect[]): readonly Blamed[] =>
  suspects.map(({ fault, p }) => ({ fault, p, part: faultOf(model, fault).part }));

/**
 * Suspects grouped by what is paid for, likeliest first, with what each costs: the price of the part and the work, as the
 * plan counts them, weighed by which of its faults it likely is.
 */
export function remediesOf(model: FaultModel, suspects: readonly Suspect[]): readonly Remedy[] {
  const all = blamed(model, suspects);
  return byPart(all)
    .filter(({ p }) => p >= TOLD_FROM)
    .map(({ part, p }) => {
      const own = all.filter((one) => one.part === part);
      const weight = own.reduce((sum, one) => sum + one.p, 0);
      const minutes = own.reduce((sum, one) => sum + one.p * mendingMinutes(model, faultOf(model, one.fault)), 0);
      return { part, p, minutes: weight > 0 ? minutes / weight : 0 };
    });
}
