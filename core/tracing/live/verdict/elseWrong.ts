import { at } from '../../../figures/rows.ts';
import type { Posterior } from '../belief/posterior.ts';
import { FIRST, PRESENCES, placeOf, SECOND } from '../belief/presence.ts';
import type { Also, Fault, FaultModel } from '../types.ts';
import { isPart, shareOf } from './blame.ts';

/** Another part is said to be at fault as well while that is likelier than not. */
const SAID_TOO = 0.5;
/** From this chance of a part more the machine is tried with ours in place before it ends. Common practice, no source. */
const MAY_BE = 0.15;

/**
 * What is likely wrong beside a part that is at fault, and has not been mended: by part, with the likeliest of its faults
 * and the chance of any; the likeliest first.
 */
function besides(model: FaultModel, posterior: Posterior, part: Fault['part']): readonly Also[] {
  const chances = new Map<number, number>();
  posterior.hypotheses.forEach(({ first, second }, h) => {
    if (second < 0) return;
    for (const [one, bit, other] of [
      [first, FIRST, second],
      [second, SECOND, first],
    ] as const) {
      if (model.faults[other]?.part !== part || model.faults[one]?.part === part) continue;
      for (let way = 0; way < PRESENCES; way++)
        if (way & bit) chances.set(one, (chances.get(one) ?? 0) + at(posterior.mass, placeOf(h, way)));
    }
  });
  const parts = new Map<Fault['part'], Also>();
  for (const [f, p] of [...chances].toSorted((a, b) => b[1] - a[1])) {
    const fault = model.faults[f];
    if (!fault || !isPart(fault.part)) continue;
    const before = parts.get(fault.part);
    parts.set(fault.part, before ? { ...before, p: before.p + p } : { part: fault.part, fault: fault.id, p });
  }
  return [...parts.values()].toSorted((a, b) => b.p - a.p);
}

/** Parts that are to be said at fault as well. */
const alsoAtFault = (model: FaultModel, posterior: Posterior, part: Fault['part']): readonly Also[] =>
  besides(model, posterior, part).filter(({ p }) => p >= SAID_TOO);

/** What a verdict says of a part beside its name: how sure it is of the way in which it failed, and what failed too. */
export const moreOf = (
  model: FaultModel,
  posterior: Posterior,
  { part, fault }: { readonly part: Fault['part']; readonly fault: string },
): { readonly pFault: number; readonly also: readonly Also[] } => ({
  pFault: shareOf(model, posterior, ({ id }) => id === fault),
  also: alsoAtFault(model, posterior, part),
});

/** May something else be wrong that would not be said, so that a new part of this kind might leave the machine as dead? */
export function moreMayBeWrong(model: FaultModel, posterior: Posterior, part: Fault['part']): boolean {
  const chance = besides(model, posterior, part).reduce((sum, { p }) => sum + (p >= SAID_TOO ? 0 : p), 0);
  return chance >= MAY_BE && alsoAtFault(model, posterior, part).length === 0;
}
