import { at } from '../../../figures/rows.ts';
import type { Condition } from './condition.ts';
import type { Hypothesis } from './hypotheses.ts';
import { FIRST, OURS, PRESENCES, type PresenceMask, SECOND } from './presence.ts';
import { Showing } from './showing.ts';

/**
 * P(outcome) of one step done now, 0..1, for a hypothesis of which so much is there: the step may mend either fault before
 * the look, and undo one of ours. The same sums as carrying it through the log, without its end:
 *
 *     P(o) = Σ_{gone ⊆ mask} P(gone) · P(o | mask without gone)
 */
export function outlook(hypothesis: Hypothesis, mask: PresenceMask, condition: Condition): number {
  const { first, firstMode, second } = hypothesis;
  const { mends, seen, nothingSeen, oursGoes, again } = condition;
  if (second < 0 && (mask & OURS) === 0 && again === 'first') {
    if ((mask & FIRST) === 0) return nothingSeen;
    const mend = at(mends, first);
    const own = at(seen, first * 2 + firstMode);
    return mend === 0 ? own : mend * nothingSeen + (1 - mend) * own;
  }
  const firstGoes = mask & FIRST ? at(mends, first) : 0;
  const secondGoes = mask & SECOND ? at(mends, second) : 0;
  const slipGoes = mask & OURS ? oursGoes : 0;
  const showing = new Showing(condition);
  let sum = 0;
  for (let gone = 0; gone < PRESENCES; gone++) {
    const p =
      (gone & FIRST ? firstGoes : 1 - firstGoes) *
      (gone & SECOND ? secondGoes : 1 - secondGoes) *
      (gone & OURS ? slipGoes : 1 - slipGoes);
    if (p > 0) sum += p * showing.chance(hypothesis, mask & ~gone);
  }
  return sum;
}
