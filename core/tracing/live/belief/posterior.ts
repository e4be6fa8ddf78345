import { addAt, at, divideBy, nth } from '../../../figures/rows.ts';
import type { FaultModel, LoggedStep, TracingCase } from '../types.ts';
import { type Carried, carriedThrough, MOST_BAD, MOST_FLAGS, ones } from './carried.ts';
import type { Condition } from './condition.ts';
import { conditionsOf, loanerIds } from './conditions.ts';
import { type Hypothesis, hypothesesOf } from './hypotheses.ts';
import { PRESENCES, placeOf } from './presence.ts';
import { type Prior, priorOf } from './prior.ts';

/** Every hypothesis with its chance after the log, split by how it stands now. */
export type Posterior = {
  readonly prior: Prior;
  readonly hypotheses: readonly Hypothesis[];
  /** P(hypothesis and what of it is there | log) at [hypothesis × PRESENCES + mask], see `PresenceMask`. Sums to 1. */
  readonly mass: Float64Array;
  readonly loaners: readonly { readonly id: string; readonly bad: number }[];
  readonly dropped: number;
  readonly logLikelihood: number;
  readonly conditions: readonly Condition[];
  readonly entries: readonly LoggedStep[];
};

/**
 * Bayes over all hypotheses h and the hidden good or bad of every loaner used, B (at most two bad at once):
 *
 *     P(h, presence | log) = Σ_B P(B)·P(h)·P(log, presence | h, B) ÷ Σ_{h, presence, B} of the same
 *
 * with P(log, presence | h, B) carried step by step, see `carry`. Exact: equals plain enumeration of these hypotheses. The
 * prior has a floor above 0 in every group, and no row an exact 0 for what is not listed, so that the sum is 0 only for a
 * log that the model rules out altogether: all chances are 0 then, and `logLikelihood` is −Infinity.
 */
export function posteriorOf(model: FaultModel, tracing: TracingCase, pairs = true): Posterior {
  const prior = priorOf(model, tracing);
  const { list, dropped } = hypothesesOf(model, prior, pairs);
  const { conditions, entries } = conditionsOf(model, tracing, prior);
  const ids = loanerIds(model, tracing).slice(0, MOST_FLAGS);
  const chances = ids.map((id) => badChance(model, tracing, id));
  const mass = new Float64Array(list.length * PRESENCES);
  const bad = new Float64Array(ids.length);
  const flags = flagSets(chances);
  const total = weigh(list, carriedThrough(model, list, conditions), flags, mass, (set, share) => {
    ids.forEach((_, b) => {
      if (set & (1 << b)) addAt(bad, b, share);
    });
  });
  if (total > 0) divideBy(mass, total);
  return {
    prior,
    hypotheses: list,
    mass,
    loaners: ids.map((id, b) => ({ id, bad: total > 0 ? at(bad, b) / total : nth(chances, b) })),
    dropped,
    logLikelihood: Math.log(total),
    conditions,
    entries,
  };
}

type FlagSet = { readonly bad: number; readonly weight: number };

/** Which of the loaners may be bad at once, at most two, with the chance of exactly these. */
function flagSets(chances: readonly number[]): readonly FlagSet[] {
  const sets: FlagSet[] = [];
  for (let bad = 0; bad < 1 << chances.length; bad++) {
    if (ones(bad) > MOST_BAD) continue;
    sets.push({ bad, weight: chances.reduce((p, chance, b) => p * (bad & (1 << b) ? chance : 1 - chance), 1) });
  }
  return sets;
}

/** Sums P(log, hypothesis, standing) over the flag sets into `standing`; `tell`s what each set of bad loaners weighs. */
function weigh(
  list: readonly Hypothesis[],
  carried: Carried,
  flags: readonly FlagSet[],
  standing: Float64Array,
  tell: (bad: number, mass: number) => void,
): number {
  // A loaner that no condition used is as it was: good and bad stand alike.
  const used = [...carried.keys()].reduce((all, bad) => all | bad, 0);
  const sets = flags.map((set) => ({ ...set, stands: standingWith(carried, set.bad & used) }));
  let total = 0;
  list.forEach(({ prior }, h) => {
    for (const { bad, weight, stands } of sets) {
      const share = weight * prior;
      let mass = 0;
      for (let place = h * PRESENCES; place < h * PRESENCES + PRESENCES; place++) {
        const p = share * (stands[place] ?? NaN);
        standing[place] = (standing[place] ?? NaN) + p;
        mass += p;
      }
      if (bad !== 0) tell(bad, mass);
      total += mass;
    }
  });
  return total;
}

/**
 * What was carried with these loaners bad.
 * @throws {RangeError} for a set that was not carried: a defect.
 */
function standingWith(carried: Carried, bad: number): Float64Array {
  const standing = carried.get(bad);
  if (!standing) throw new RangeError(`the log was not carried with the loaners ${bad} bad`);
  return standing;
}

/** How likely a loaner was bad before it was used here: by the standing it had at its first use. */
function badChance(model: FaultModel, tracing: TracingCase, id: string): number {
  for (const entry of tracing.log) {
    const used = entry.struck ? undefined : entry.loaners.find((each) => each.id === id);
    if (used) return model.badLoaner[used.kind]?.chance[used.standing] ?? 0;
  }
  return 0;
}

/** P(hypothesis | log), however it stands now. */
export function massOf(posterior: Posterior, h: number): number {
  let mass = 0;
  for (let state = 0; state < PRESENCES; state++) mass += at(posterior.mass, placeOf(h, state));
  return mass;
}
