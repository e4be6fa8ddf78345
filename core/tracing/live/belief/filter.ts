import { at } from '../../../figures/rows.ts';
import type { Condition } from './condition.ts';
import type { Hypothesis } from './hypotheses.ts';
import { FIRST, OURS, PRESENCES, SECOND } from './presence.ts';
import { Showing } from './showing.ts';

/** P(log so far, presence | hypothesis), at each presence mask: which of its faults are still there, and whether one of ours is. */
export type StillThere = Float64Array;

/**
 * Carries one hypothesis through the log, with some loaners bad (a bit set): the forward filter of a hidden Markov chain
 * over what of it is there (Rabiner, Proceedings of the IEEE 77, 1989),
 *
 *     α_k(m) = Σ_{m'} A_k(m' → m after the look) · P(outcome_k | m') · Σ_{m''} M_k(m'' → m') · α_{k−1}(m'')
 *
 * where M_k mends by the step's handlings and lets opening leave a fault of ours, and A_k mends by putting back. Masks m as
 * in `PresenceMask`; the result is not normalised: its total is P(log | hypothesis, bad loaners).
 */
export function carry(
  hypothesis: Hypothesis,
  conditions: readonly Condition[],
  bad: number,
  into: StillThere,
): StillThere {
  begin(hypothesis, into, 0);
  for (const condition of conditions) carryOn(lookingAt(condition), hypothesis, { bad, seen: nothingSeen() }, into, 0);
  return into;
}

/** Before the log: all of the hypothesis is there, nothing of ours. */
export function begin(hypothesis: Hypothesis, into: StillThere, from: number): void {
  into.fill(0, from, from + PRESENCES);
  into[from + ((hypothesis.first >= 0 ? FIRST : 0) | (hypothesis.second >= 0 ? SECOND : 0))] = 1;
}

/** P(what was seen | mask) as far as it was asked for: NaN where not yet. */
export type ChancesSeen = Float64Array;

/** Which of a condition's loaners are bad, and what was asked for so far with these: shared by all carried with the same. */
export type WithBad = { readonly bad: number; readonly seen: ChancesSeen };

/**
 * One step of `carry`, for the hypothesis whose part of `there` begins at `from`, with these loaners bad. A mask without any
 * chance is not looked at.
 */
export function carryOn(
  { condition, showing }: Looking,
  hypothesis: Hypothesis,
  { bad, seen }: WithBad,
  there: StillThere,
  from: number,
): void {
  const { first, second } = hypothesis;
  const { mends, mendsAfter, oursGoes, oursComes } = condition;
  mend(there, from, FIRST, at(mends, first));
  if (second >= 0) mend(there, from, SECOND, at(mends, second));
  mend(there, from, OURS, oursGoes);
  if (oursComes > 0) appear(there, from, oursComes);
  for (let mask = 0; mask < PRESENCES; mask++) {
    const p = there[from + mask] ?? NaN;
    if (p === 0) continue;
    let chance = seen[mask] ?? NaN;
    if (Number.isNaN(chance)) {
      chance = showing.chance(hypothesis, mask, bad);
      seen[mask] = chance;
    }
    there[from + mask] = p * chance;
  }
  mend(there, from, FIRST, at(mendsAfter, first));
  if (second >= 0) mend(there, from, SECOND, at(mendsAfter, second));
}

/** A condition, and what reckons its chances. */
export type Looking = { readonly condition: Condition; readonly showing: Showing };

/** A condition ready to be looked at for many hypotheses in turn. */
export const lookingAt = (condition: Condition): Looking => ({ condition, showing: new Showing(condition) });

/** Nothing asked for yet. */
export const nothingSeen = (): ChancesSeen => new Float64Array(PRESENCES).fill(Number.NaN);

/** What of a bit is there is gone with this chance. */
function mend(there: StillThere, from: number, bit: number, chance: number): void {
  if (chance === 0) return;
  for (let mask = 0; mask < PRESENCES; mask++) {
    if ((mask & bit) === 0) continue;
    const gone = (there[from + mask] ?? NaN) * chance;
    there[from + mask] = (there[from + mask] ?? NaN) - gone;
    there[from + (mask ^ bit)] = (there[from + (mask ^ bit)] ?? NaN) + gone;
  }
}

/** One of ours is there with this chance where none was. */
function appear(there: StillThere, from: number, chance: number): void {
  for (let place = from; place < from + OURS; place++) {
    const come = (there[place] ?? NaN) * chance;
    there[place] = (there[place] ?? NaN) - come;
    there[place + OURS] = (there[place + OURS] ?? NaN) + come;
  }
}
