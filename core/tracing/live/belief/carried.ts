import type { Kept } from '../memory.ts';
import type { FaultModel } from '../types.ts';
import type { Condition } from './condition.ts';
import { begin, carryOn, lookingAt, nothingSeen } from './filter.ts';
import type { Hypothesis } from './hypotheses.ts';
import { PRESENCES } from './presence.ts';

/** More loaners than this in one log are taken as good from the first use on. */
export const MOST_FLAGS = 6;
/** At most so many loaners are bad at once. */
export const MOST_BAD = 2;

/**
 * P(log, standing | hypothesis) at [hypothesis × PRESENCES + standing], for every set of bad loaners (bits) among those that
 * the log has used so far. A bad loaner shows from its first use on: before it, the set without it stands for both.
 */
export type Carried = ReadonlyMap<number, Float64Array>;

/** Logs that were carried last: the next one is most often one of these and a step more. */
type CarriedLog = { readonly list: readonly Hypothesis[]; readonly said: readonly string[]; readonly carried: Carried };
const LOGS: Kept<CarriedLog[]> = { begin: () => [] };
/** So many are kept: a bench or two and what they look back at. A long log with five loaners takes about a megabyte. */
const MOST_KEPT = 32;

/**
 * Carries all hypotheses through the log, from the longest beginning of it that is still known: P(log, presence | hypothesis,
 * bad loaners), not normalised. Logs carried before are kept with the model; the answer is not the caller's to change.
 */
export function carriedThrough(
  model: FaultModel,
  list: readonly Hypothesis[],
  conditions: readonly Condition[],
): Carried {
  const kept = model.memory.of(model, LOGS);
  const said = conditions.map(saysOf);
  const known = longestKept(kept, list, said);
  if (known?.said.length === said.length) return known.carried;
  const carried = new Map(
    known ? [...known.carried].map(([bad, stands]) => [bad, stands.slice()]) : [[0, start(list)]],
  );
  for (const condition of conditions.slice(known?.said.length ?? 0)) carryAll(list, condition, carried);
  kept.push({ list, said, carried });
  if (kept.length > MOST_KEPT) kept.shift();
  return carried;
}

/** All that tells one condition from another while the prior is the same. */
const saysOf = ({ step, before, look, spent, finding, outcome, again, oursComes, loaners }: Condition): string =>
  `${step} ${before} ${look} ${spent} ${finding ?? ''} ${outcome} ${again} ${oursComes} ${loaners.map((used) => `${used.loaner}:${used.actsAs}`)}`;

function longestKept(
  kept: readonly CarriedLog[],
  list: readonly Hypothesis[],
  said: readonly string[],
): CarriedLog | null {
  let longest: CarriedLog | null = null;
  for (const one of kept) {
    if (one.list !== list || one.said.length > said.length || one.said.length <= (longest?.said.length ?? -1)) continue;
    if (one.said.every((each, k) => each === said[k])) longest = one;
  }
  return longest;
}

function start(list: readonly Hypothesis[]): Float64Array {
  const stands = new Float64Array(list.length * PRESENCES);
  list.forEach((hypothesis, h) => {
    begin(hypothesis, stands, h * PRESENCES);
  });
  return stands;
}

/** One more condition. What it says is asked once for all sets whose bad loaners are not in it. */
function carryAll(list: readonly Hypothesis[], condition: Condition, carried: Map<number, Float64Array>): void {
  const used = condition.loaners.reduce((set, { loaner }) => (loaner < MOST_FLAGS ? set | (1 << loaner) : set), 0);
  addLoaners(carried, used);
  const looking = lookingAt(condition);
  const sound = nothingSeen();
  const spoilt = nothingSeen();
  const sets = [...carried].map(([all, stands]) => {
    const bad = all & used;
    return { withBad: { bad, seen: bad === 0 ? sound : spoilt }, stands };
  });
  list.forEach((hypothesis, h) => {
    sound.fill(Number.NaN);
    for (const { withBad, stands } of sets) {
      if (withBad.bad !== 0) spoilt.fill(Number.NaN);
      carryOn(looking, hypothesis, withBad, stands, h * PRESENCES);
    }
  });
}

/** From its first use on, each set is carried with the loaner good and with it bad. */
function addLoaners(carried: Map<number, Float64Array>, used: number): void {
  for (let flag = 1; flag <= used; flag <<= 1) {
    if ((used & flag) === 0 || carried.has(flag)) continue;
    for (const [bad, stands] of [...carried]) if (ones(bad) < MOST_BAD) carried.set(bad | flag, stands.slice());
  }
}

/** How many bits are set: of a set of loaners, how many are bad. */
export function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count += 1;
  return count;
}
