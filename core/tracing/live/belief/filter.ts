import { at } from '../../../figures/rows.ts';
import { chanceOf, isSteady, mendedSince, type Showing, show, showNothing } from './chanceOf.ts';
import type { Condition } from './condition.ts';
import type { Hypothesis } from './hypotheses.ts';
import { FIRST, OURS, PRESENCES, SECOND } from './presence.ts';

/** P(log so far, presence | hypothesis), at each presence mask: which of its faults are still there, and whether one of ours is. */
export type Standing = Float64Array;

const shown: Showing = { count: 0, normal: 1, seen: 0, odd: 0, steady: true };
const chances = new Float64Array(PRESENCES);

/**
 * Carries one hypothesis through the log, with some loaners bad (a bit set): the forward filter of a hidden Markov chain
 * over what of it is there (Rabiner, Proceedings of the IEEE 77, 1989),
 *
 *     α_k(m) = Σ_{m'} A_k(m' → m after the look) · P(outcome_k | m') · Σ_{m''} M_k(m'' → m') · α_{k−1}(m'')
 *
 * where M_k mends by the step's handlings and lets opening leave a fault of ours, and A_k mends by putting back. Masks m as
 * in `PresenceMask`; the result is not normalised: its total is P(log | hypothesis, bad loaners).
 */
export function carry(hypothesis: Hypothesis, conditions: readonly Condition[], bad: number, into: Standing): Standing {
  begin(hypothesis, into, 0);
  for (const condition of conditions) {
    chancesSeen(hypothesis, condition, bad, chances);
    carryOn(hypothesis, condition, chances, into, 0);
  }
  return into;
}

/** Before the log: all of the hypothesis is there, nothing of ours. */
export function begin(hypothesis: Hypothesis, into: Standing, from: number): void {
  into.fill(0, from, from + PRESENCES);
  into[from + ((hypothesis.first >= 0 ? FIRST : 0) | (hypothesis.second >= 0 ? SECOND : 0))] = 1;
}

/** P(what was seen) for every way the hypothesis can stand, into `into`. */
export function chancesSeen(hypothesis: Hypothesis, condition: Condition, bad: number, into: Float64Array): void {
  const { first, second } = hypothesis;
  const { normal, seen, inCircuit } = condition;
  const a = first * 2 + hypothesis.firstMode;
  const b = second * 2 + hypothesis.secondMode;
  const firstIn = inCircuit[first] === 1;
  const secondIn = second >= 0 && inCircuit[second] === 1;
  for (let state = 0; state < PRESENCES; state++) {
    // Alone, a hypothesis has no second fault to be there.
    if (second < 0 && state & SECOND) continue;
    showNothing(shown);
    if (firstIn && state & FIRST)
      show(shown, condition, at(normal, a), at(seen, a), isSteady(condition, first, hypothesis.firstMode));
    if (secondIn && state & SECOND)
      show(shown, condition, at(normal, b), at(seen, b), isSteady(condition, second, hypothesis.secondMode));
    if (state & OURS) show(shown, condition, condition.oursNormal, condition.oursSeen, true);
    if (bad !== 0) showLoaners(condition, bad);
    if ((state & FIRST) === 0 || (second >= 0 && (state & SECOND) === 0)) mendedSince(shown);
    into[state] = chanceOf(condition, shown);
  }
}

/** One step of `carry`, with what `chancesSeen` says of it; `standing` begins at `from`. */
export function carryOn(
  { first, second }: Hypothesis,
  { mends, mendsAfter, oursGoes, oursComes }: Condition,
  chances: Float64Array,
  standing: Standing,
  from: number,
): void {
  mend(standing, from, FIRST, at(mends, first));
  if (second >= 0) mend(standing, from, SECOND, at(mends, second));
  mend(standing, from, OURS, oursGoes);
  if (oursComes > 0) appear(standing, from, oursComes);
  for (let state = 0; state < PRESENCES; state++)
    standing[from + state] = at(standing, from + state) * at(chances, state);
  mend(standing, from, FIRST, at(mendsAfter, first));
  if (second >= 0) mend(standing, from, SECOND, at(mendsAfter, second));
}

/** A bad loaner shows like the fault it acts as, whatever of the owner's is out. */
function showLoaners(condition: Condition, bad: number): void {
  for (const { loaner, actsAs } of condition.loaners)
    if (bad & (1 << loaner))
      show(shown, condition, at(condition.badNormal, actsAs), at(condition.badSeen, actsAs), true);
}

function mend(standing: Standing, from: number, bit: number, chance: number): void {
  if (chance === 0) return;
  for (let state = 0; state < PRESENCES; state++) {
    if ((state & bit) === 0) continue;
    const gone = at(standing, from + state) * chance;
    standing[from + state] = at(standing, from + state) - gone;
    standing[from + (state ^ bit)] = at(standing, from + (state ^ bit)) + gone;
  }
}

function appear(standing: Standing, from: number, chance: number): void {
  for (let state = from; state < from + OURS; state++) {
    const come = at(standing, state) * chance;
    standing[state] = at(standing, state) - come;
    standing[state + OURS] = at(standing, state + OURS) + come;
  }
}
