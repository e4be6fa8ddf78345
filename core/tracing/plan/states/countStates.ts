import { at, nth } from '../../../figures/rows.ts';
import type { CompiledProblem } from '../problem/compiledProblem.ts';
import type { PlanState } from './planState.ts';

/** Sets of still possible faults kept apart while counting; beyond, outcomes count as possible in any combination. */
const MOST_SUPPORTS = 20_000;

export type StateCount = {
  readonly states: bigint;
  /** Exact when no step needs anything closed: what stands open then follows from what has been done. */
  readonly counted: 'exactly' | 'at least' | 'at most';
};

/**
 * How many states (outcomes so far, arrangement) can be reached with a probability above 0. Where steps need something
 * closed the arrangements are only bounded; once the outcomes alone exceed `limit`, at least so many are told.
 */
export function countStates(
  compiled: CompiledProblem,
  from: PlanState,
  arrangements: number,
  limit: number,
): StateCount {
  const left = compiled.problem.steps.map((_, s) => s).filter((s) => from.done[s] === 0);
  const closing =
    left.some((s) => (compiled.problem.steps[s]?.closes.length ?? 0) > 0) && compiled.problem.assembly.length > 0;
  const combinations = countOutcomes(compiled, from, left);
  if (!closing) return combinations;
  if (combinations.counted === 'exactly' && combinations.states > limit)
    return { ...combinations, counted: 'at least' };
  const most = Number.isFinite(arrangements) ? BigInt(arrangements) : 2n ** BigInt(compiled.problem.assembly.length);
  return { states: combinations.states * most, counted: 'at most' };
}

/** Combinations of outcomes that leave some fault possible: counted by the set of faults that each leaves. */
function countOutcomes(compiled: CompiledProblem, from: PlanState, left: readonly number[]): StateCount {
  const possible = (f: number): boolean => at(from.belief, f) > 0;
  const everything = from.belief.reduce((set, _, f) => (possible(f) ? set | (1n << BigInt(f)) : set), 0n);
  let bySet = new Map<bigint, bigint>([[everything, 1n]]);
  for (const s of left) {
    const goingOn = (compiled.goingOn[s] ?? []).map((o) => {
      const row = nth(nth(compiled.problem.steps, s).chance, o);
      return row.reduce((set, chance, f) => (chance > 0 && possible(f) ? set | (1n << BigInt(f)) : set), 0n);
    });
    const next = new Map(bySet);
    for (const [set, count] of bySet) {
      for (const outcome of goingOn) {
        const both = set & outcome;
        if (both !== 0n) next.set(both, (next.get(both) ?? 0n) + count);
      }
    }
    bySet = next;
    if (bySet.size > MOST_SUPPORTS) return { states: productOf(compiled, left), counted: 'at most' };
  }
  return { states: [...bySet.values()].reduce((sum, count) => sum + count, 0n), counted: 'exactly' };
}

const productOf = (compiled: CompiledProblem, left: readonly number[]): bigint =>
  left.reduce((product, s) => product * BigInt(1 + (compiled.goingOn[s]?.length ?? 0)), 1n);

/** A count as people read it: 12582912, or 1.07e+301 when it is longer than fifteen digits. */
export function sayCount(states: bigint): string {
  const digits = states.toString();
  if (digits.length <= 15) return digits;
  return `${digits[0]}.${digits.slice(1, 3)}e+${digits.length - 1}`;
}
