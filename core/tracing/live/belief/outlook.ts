import { at } from '../../../figures/rows.ts';
import { chanceOf, isSteady, mendedSince, type Showing, show, showNothing } from './chanceOf.ts';
import type { Condition } from './condition.ts';
import type { Hypothesis } from './hypotheses.ts';
import { FIRST, OURS, PRESENCES, SECOND } from './presence.ts';

const shown: Showing = { count: 0, normal: 1, seen: 0, odd: 0, steady: true };

/**
 * P(outcome) of one step done now, for a hypothesis of which so much is there (`PresenceMask`): the step may mend either before the look. The same sums as carrying it through the log, without its end.
 */
export function outlook(hypothesis: Hypothesis, standing: number, condition: Condition): number {
  if (hypothesis.second < 0 && (standing & OURS) === 0 && condition.again === 'first') {
    if ((standing & FIRST) === 0) return condition.nothingSeen;
    const mend = at(condition.mends, hypothesis.first);
    const seen = at(condition.seen, hypothesis.first * 2 + hypothesis.firstMode);
    return mend === 0 ? seen : mend * condition.nothingSeen + (1 - mend) * seen;
  }
  const first = (standing & FIRST) !== 0;
  const second = (standing & SECOND) !== 0;
  const ours = (standing & OURS) !== 0;
  const mend1 = first ? at(condition.mends, hypothesis.first) : 0;
  const mend2 = second ? at(condition.mends, hypothesis.second) : 0;
  const goes = ours ? condition.oursGoes : 0;
  let sum = 0;
  for (let gone = 0; gone < PRESENCES; gone++) {
    const p =
      (gone & FIRST ? mend1 : 1 - mend1) * (gone & SECOND ? mend2 : 1 - mend2) * (gone & OURS ? goes : 1 - goes);
    if (p > 0)
      sum +=
        p * looked(hypothesis, condition, first && !(gone & FIRST), second && !(gone & SECOND), ours && !(gone & OURS));
  }
  return sum;
}

function looked(
  { first, firstMode, second, secondMode }: Hypothesis,
  condition: Condition,
  one: boolean,
  two: boolean,
  ours: boolean,
): number {
  showNothing(shown);
  const { normal, seen, inCircuit } = condition;
  if (one && inCircuit[first] === 1)
    show(
      shown,
      condition,
      at(normal, first * 2 + firstMode),
      at(seen, first * 2 + firstMode),
      isSteady(condition, first, firstMode),
    );
  if (two && inCircuit[second] === 1)
    show(
      shown,
      condition,
      at(normal, second * 2 + secondMode),
      at(seen, second * 2 + secondMode),
      isSteady(condition, second, secondMode),
    );
  if (ours) show(shown, condition, condition.oursNormal, condition.oursSeen, true);
  if (!one || (second >= 0 && !two)) mendedSince(shown);
  return chanceOf(condition, shown);
}
