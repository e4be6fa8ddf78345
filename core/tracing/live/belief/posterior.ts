import type { FaultModel, LoggedStep, TracingCase } from '../types.ts';
import type { Condition } from './condition.ts';
import { conditionsOf, loanerIds } from './conditions.ts';
import { begin, carryOn } from './filter.ts';
import { type Hypothesis, hypothesesOf } from './hypotheses.ts';
import { type Prior, priorOf } from './prior.ts';

/** Every hypothesis with its chance after the log, split by how it stands now. */
export type Posterior = {
  readonly prior: Prior;
  readonly hypotheses: readonly Hypothesis[];
  /** P(hypothesis and standing | log) at [hypothesis × 8 + standing]: bit 0 the first still there, 1 the second, 2 one of ours. */
  readonly standing: Float64Array;
  readonly loaners: readonly { readonly id: string; readonly bad: number }[];
  readonly dropped: number;
  readonly logLikelihood: number;
  readonly conditions: readonly Condition[];
  readonly entries: readonly LoggedStep[];
};

/** More loaners than this in one log are taken as good from the first use on. */
const MOST_FLAGS = 6;

/**
 * Bayes over all hypotheses and the hidden good or bad of every loaner used (at most two bad at once).
 * Exact: equals plain enumeration of these hypotheses.
 */
export function posteriorOf(model: FaultModel, tracing: TracingCase, pairs = true): Posterior {
  const prior = priorOf(model, tracing);
  const { list, dropped } = hypothesesOf(model, prior, pairs);
  const { conditions, entries } = conditionsOf(model, tracing, prior);
  const ids = loanerIds(model, tracing).slice(0, MOST_FLAGS);
  const chances = ids.map((id) => badChance(model, tracing, id));
  const standing = new Float64Array(list.length * 8);
  const bad = new Float64Array(ids.length);
  const flags = flagSets(chances);
  const total = weigh(list, conditions, flags, standing, (set, mass) => {
    for (let at = 0; at < ids.length; at++) if (set & (1 << at)) bad[at] = (bad[at] as number) + mass;
  });
  if (total > 0) for (let at = 0; at < standing.length; at++) standing[at] = (standing[at] as number) / total;
  return {
    prior,
    hypotheses: list,
    standing,
    loaners: ids.map((id, at) => ({ id, bad: total > 0 ? (bad[at] as number) / total : (chances[at] as number) })),
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
    if (ones(bad) > 2) continue;
    sets.push({ bad, weight: chances.reduce((p, chance, at) => p * (bad & (1 << at) ? chance : 1 - chance), 1) });
  }
  return sets;
}

/** A flag set as it is carried: as the set `parent` before condition `from`, the first that uses the last of its loaners. */
type Branch = FlagSet & { readonly from: number; readonly parent: number };

function branchesOf(flags: readonly FlagSet[], conditions: readonly Condition[]): readonly Branch[] {
  const firstUse = (loaner: number): number => {
    const at = conditions.findIndex((condition) => condition.loaners.some((used) => used.loaner === loaner));
    return at < 0 ? conditions.length : at;
  };
  return flags.map((set) => {
    const loaners = Array.from({ length: MOST_FLAGS }, (_, loaner) => loaner).filter((at) => set.bad & (1 << at));
    const last = loaners.toSorted((a, b) => firstUse(b) - firstUse(a))[0];
    if (last === undefined) return { ...set, from: 0, parent: -1 };
    const without = set.bad & ~(1 << last);
    return { ...set, from: firstUse(last), parent: flags.findIndex((one) => one.bad === without) };
  });
}

/**
 * Sums P(log, hypothesis, standing) over the flag sets into `standing`. A bad loaner shows from its first use on: what
 * comes before is carried once for all sets that do not differ there.
 */
function weigh(
  list: readonly Hypothesis[],
  conditions: readonly Condition[],
  flags: readonly FlagSet[],
  standing: Float64Array,
  tell: (bad: number, mass: number) => void,
): number {
  const branches = branchesOf(flags, conditions);
  /** Per set: how it stands before each condition. */
  const stands = branches.map(() => new Float64Array(conditions.length * 8 + 8));
  const now = new Float64Array(8);
  let total = 0;
  for (let h = 0; h < list.length; h++) {
    const hypothesis = list[h] as Hypothesis;
    for (let at = 0; at < branches.length; at++) {
      const { bad, weight, from, parent } = branches[at] as Branch;
      const own = stands[at] as Float64Array;
      const before = stands[parent];
      if (!before) begin(hypothesis, now);
      else for (let i = 0; i < from * 8 + 8; i++) own[i] = before[i] as number;
      if (before) for (let state = 0; state < 8; state++) now[state] = before[from * 8 + state] as number;
      for (let k = from; k < conditions.length; k++) {
        for (let state = 0; state < 8; state++) own[k * 8 + state] = now[state] as number;
        carryOn(hypothesis, conditions[k] as Condition, bad, now);
      }
      for (let state = 0; state < 8; state++) own[conditions.length * 8 + state] = now[state] as number;
      let mass = 0;
      for (let state = 0; state < 8; state++) {
        const p = weight * hypothesis.prior * (now[state] as number);
        standing[h * 8 + state] = (standing[h * 8 + state] as number) + p;
        mass += p;
      }
      if (bad !== 0) tell(bad, mass);
      total += mass;
    }
  }
  return total;
}

/** How likely a loaner was bad before it was used here: by the standing it had at its first use. */
function badChance(model: FaultModel, tracing: TracingCase, id: string): number {
  for (const entry of tracing.log) {
    const used = entry.struck ? undefined : entry.loaners.find((each) => each.id === id);
    if (used) return model.badLoaner[used.kind]?.chance[used.standing] ?? 0;
  }
  return 0;
}

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count += 1;
  return count;
}
