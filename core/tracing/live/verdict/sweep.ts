import type { Fault, FaultModel, Step, Suspect } from '../types.ts';
import { faultOf } from './blame.ts';

/** Of what a sweep mended, one kind likelier than this leaves nothing to be told apart. Common practice, no source. */
const TOLD_APART_FROM = 0.95;

/** What a sweep did can be told apart only by undoing it, and only a setting can be put back: a contact made cannot be unmade. */
type Kind = 'setting' | 'reseating';

const kindOf = (by: Fault['mendedBy']): Kind => (by === 'setting' ? 'setting' : 'reseating');

/** By what it was mended, a setting or a contact: shares of the belief in what is mended, summing to 1. */
export function mendedByKind(
  model: FaultModel,
  suspects: readonly Suspect[],
  among: (fault: string) => boolean = () => true,
): { readonly [kind in Kind]: number } {
  const sums = { setting: 0, reseating: 0 };
  for (const { fault, mended } of suspects) if (among(fault)) sums[kindOf(faultOf(model, fault).mendedBy)] += mended;
  const all = sums.setting + sums.reseating;
  return all > 0 ? { setting: sums.setting / all, reseating: sums.reseating / all } : { setting: 0.5, reseating: 0.5 };
}

/** The kind of handling that the belief leaves no doubt of; null: to be found out, or left at that. */
export function toldApart(model: FaultModel, suspects: readonly Suspect[], among: (fault: string) => boolean) {
  const shares = mendedByKind(model, suspects, among);
  return (['setting', 'reseating'] as const).find((kind) => shares[kind] >= TOLD_APART_FROM) ?? null;
}

/**
 * Chances of finding out which it was, by outcome: as the belief has it, for putting the old settings back shows just that.
 * Null for every other step.
 */
export function chancesToTellApart(
  model: FaultModel,
  step: Step,
  suspects: readonly Suspect[],
): readonly number[] | null {
  const kinds = step.outcomes.map(({ meaning }) => (meaning.means === 'separates' ? kindOf(meaning.by) : null));
  if (kinds.some((kind) => kind === null)) return null;
  const shares = mendedByKind(model, suspects);
  return kinds.map((kind) => shares[kind ?? 'reseating']);
}
