import { chanceOf, type Showing, show, showNothing } from './chanceOf.ts';
import type { Condition } from './condition.ts';
import type { Hypothesis } from './hypotheses.ts';

/**
 * How it stands with a hypothesis after the log: P(log so far and this), by which of its faults are still there
 * (bit 0 the first, bit 1 the second) and whether there is one of our own making (bit 2).
 */
export type Standing = Float64Array;

const FIRST = 1;
const SECOND = 2;
const OURS = 4;

const shown: Showing = { count: 0, normal: 1, seen: 0, odd: 0, steady: true };

/**
 * Carries one hypothesis through the log, with some loaners bad (a bit set). Before each look handlings may mend
 * and opening may leave a fault of ours; after it, putting back may mend.
 */
export function carry(hypothesis: Hypothesis, conditions: readonly Condition[], bad: number, into: Standing): Standing {
  begin(hypothesis, into);
  for (let k = 0; k < conditions.length; k++) carryOn(hypothesis, conditions[k] as Condition, bad, into);
  return into;
}

/** Before the log: all of the hypothesis is there, nothing of ours. */
export function begin(hypothesis: Hypothesis, into: Standing): void {
  into.fill(0);
  into[(hypothesis.first >= 0 ? FIRST : 0) | (hypothesis.second >= 0 ? SECOND : 0)] = 1;
}

/** One step of `carry`. */
export function carryOn(hypothesis: Hypothesis, condition: Condition, bad: number, standing: Standing): void {
  const { first, second } = hypothesis;
  mend(standing, FIRST, condition.mends[first] as number);
  if (second >= 0) mend(standing, SECOND, condition.mends[second] as number);
  if (condition.oursGoes > 0) mend(standing, OURS, condition.oursGoes);
  if (condition.oursComes > 0) appear(standing, condition.oursComes);
  const a = first * 2 + hypothesis.firstMode;
  const b = second * 2 + hypothesis.secondMode;
  const firstIn = condition.inCircuit[first] === 1;
  const secondIn = second >= 0 && condition.inCircuit[second] === 1;
  for (let state = 0; state < 8; state++) {
    const p = standing[state] as number;
    if (p === 0) continue;
    showNothing(shown);
    if (firstIn && state & FIRST)
      show(shown, condition, condition.normal[a] as number, condition.seen[a] as number, hypothesis.firstMode === 0);
    if (secondIn && state & SECOND)
      show(shown, condition, condition.normal[b] as number, condition.seen[b] as number, hypothesis.secondMode === 0);
    if (state & OURS) show(shown, condition, condition.oursNormal, condition.oursSeen, true);
    if (bad !== 0) showLoaners(condition, bad);
    standing[state] = p * chanceOf(condition, shown);
  }
  mend(standing, FIRST, condition.mendsAfter[first] as number);
  if (second >= 0) mend(standing, SECOND, condition.mendsAfter[second] as number);
}

/** A bad loaner shows like the fault it acts as, whatever of the owner's is out. */
function showLoaners(condition: Condition, bad: number): void {
  for (const { loaner, actsAs } of condition.loaners)
    if (bad & (1 << loaner))
      show(shown, condition, condition.badNormal[actsAs] as number, condition.badSeen[actsAs] as number, true);
}

function mend(standing: Standing, bit: number, chance: number): void {
  if (chance === 0) return;
  for (let state = 0; state < 8; state++) {
    if ((state & bit) === 0) continue;
    const gone = (standing[state] as number) * chance;
    standing[state] = (standing[state] as number) - gone;
    standing[state ^ bit] = (standing[state ^ bit] as number) + gone;
  }
}

function appear(standing: Standing, chance: number): void {
  for (let state = 0; state < 4; state++) {
    const come = (standing[state] as number) * chance;
    standing[state] = (standing[state] as number) - come;
    standing[state | OURS] = (standing[state | OURS] as number) + come;
  }
}
