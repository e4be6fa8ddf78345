import { at, nth } from '../../../figures/rows.ts';
import type { Kept } from '../memory.ts';
import { faultNumber, NOTHING_WRONG } from '../model/special.ts';
import type { FaultModel } from '../types.ts';
import type { Prior } from './prior.ts';

/** One or two faults, each steady (0) or coming and going (1), with the prior chance of exactly this. */
export type Hypothesis = {
  readonly first: number;
  readonly firstMode: 0 | 1;
  /** -1 when alone. */
  readonly second: number;
  readonly secondMode: 0 | 1;
  readonly prior: number;
};

/** A pair takes each of its faults in its likelier mode alone. */
const LIKELIER_THAN_NOT = 0.5;
/** Pairs less likely than this beforehand are dropped; their mass is shown. */
const LEAST_PAIR = 1e-6;

export type Hypotheses = { readonly list: readonly Hypothesis[]; readonly dropped: number };

/** By prior, of one fault alone and of pairs too. */
const LISTS: Kept<WeakMap<Prior, { single?: Hypotheses; pairs?: Hypotheses }>> = { begin: () => new WeakMap() };

/**
 * As `listHypotheses`, made once per prior. `prior.weight` and `.comesAndGoes`: per fault of the model. `list` sums to one;
 * `dropped`: the chance of all that was too unlikely to be kept.
 */
export function hypothesesOf(model: FaultModel, prior: Prior, pairs: boolean): Hypotheses {
  const lists = model.memory.of(model, LISTS);
  const made = lists.get(prior) ?? {};
  lists.set(prior, made);
  const kind = pairs ? 'pairs' : 'single';
  made[kind] ??= listHypotheses(model, prior, pairs);
  return made[kind];
}

/**
 * All hypotheses: every fault alone in both modes; every pair with prior w_i·w_j·κ, listed pairs with their own chance
 * given the first, each fault of a pair in its likelier mode. Normalised over what is kept.
 */
function listHypotheses(model: FaultModel, prior: Prior, pairs: boolean): Hypotheses {
  const list: Hypothesis[] = [];
  const nothing = faultNumber(model, NOTHING_WRONG);
  prior.weight.forEach((weight, f) => {
    const comes = f === nothing ? 0 : at(prior.comesAndGoes, f);
    if (weight * (1 - comes) > 0)
      list.push({ first: f, firstMode: 0, second: -1, secondMode: 0, prior: weight * (1 - comes) });
    if (weight * comes > 0) list.push({ first: f, firstMode: 1, second: -1, secondMode: 0, prior: weight * comes });
  });
  let dropped = 0;
  if (pairs) {
    const listed = listedPairs(model, prior);
    const mode = (f: number): 0 | 1 => (at(prior.comesAndGoes, f) > LIKELIER_THAN_NOT ? 1 : 0);
    for (let i = 0; i < prior.weight.length; i++) {
      for (let j = i + 1; j < prior.weight.length; j++) {
        if (i === nothing || j === nothing) continue;
        const wi = at(prior.weight, i);
        const wj = at(prior.weight, j);
        const own = listed.get(i * prior.weight.length + j);
        const chance = own ? (own.first === i ? wi : wj) * own.weight : wi * wj * model.kappa;
        if (chance < LEAST_PAIR) dropped += chance;
        else list.push({ first: i, firstMode: mode(i), second: j, secondMode: mode(j), prior: chance });
      }
    }
  }
  const total = list.reduce((sum, each) => sum + each.prior, 0);
  return { list: list.map((each) => ({ ...each, prior: each.prior / total })), dropped: dropped / (total + dropped) };
}

function listedPairs(
  model: FaultModel,
  { together }: Prior,
): Map<number, { readonly first: number; readonly weight: number }> {
  const size = model.faults.length;
  return new Map(
    model.pairs.map((pair, k) => {
      const first = faultNumber(model, pair.faults[0]);
      const second = faultNumber(model, pair.faults[1]);
      return [Math.min(first, second) * size + Math.max(first, second), { first, weight: nth(together, k) }];
    }),
  );
}
