import type { Ranking } from '../../plan/ahead/rank.ts';
import type { Cancel } from '../../plan/problem/effort.ts';
import { regardless } from '../problem/handOver.ts';
import { toProblem } from '../problem/toProblem.ts';
import type { StopAnswer } from '../types.ts';
import { lastWord, wasDeclined } from '../verdict/lastWord.ts';
import { neverFailedHere } from '../verdict/neverFailedHere.ts';
import type { Candidates } from './candidates.ts';
import { rankSteps } from './ranking.ts';
import { endsTracing, namedPart, type TracedSoFar } from './tracedSoFar.ts';

type HandedOver = Extract<StopAnswer, { readonly stop: 'hand-over' }>;

/** Why no step is offered: something is owed first, it is settled, or nothing is left to do or to be paid for. */
export function stopAnswer(
  now: TracedSoFar,
  candidates: Candidates,
  ranking: Ranking,
  cancel: Cancel | undefined,
): StopAnswer {
  const { verdict } = now;
  if (candidates.owes.length > 0) return { stop: 'owed', verdict, owed: candidates.owes };
  if (endsTracing(verdict) || namedPart(now) !== null) return { stop: 'settled', verdict };
  const { model, tracing, posterior, suspects } = now;
  // Never seen to fail here, and nothing is left that is likely to make it: that is what can be said, not more.
  const last = neverFailedHere(model, tracing, suspects) ?? lastWord({ model, tracing, posterior, suspects });
  return last ? { stop: 'settled', verdict: last } : handedOver(now, candidates, ranking, cancel);
}

/** None would tell anything even if it were paid for, the owner declined what would, or money ends it. */
function handedOver(
  { model, tracing, posterior, open }: TracedSoFar,
  { live, steps, ready, holding, notOffered }: Candidates,
  { stopping }: Ranking,
  cancel: Cancel | undefined,
): HandedOver {
  const paidFor = () =>
    toProblem(model, tracing, posterior, { steps: ready, held: holding, handOver: regardless(live.handOver) });
  const paid = steps.length === 0 ? null : rankSteps(model, paidFor(), open, { method: 'ratio', cancel });
  const noneLeft = paid === null || paid.best < 0;
  return {
    stop: 'hand-over',
    expectedMinutes: paid?.steps[0]?.expectedMinutes ?? stopping,
    handOverMinutes: live.handOver.left,
    because: !noneLeft
      ? `dearer-than-${live.handOver.by}`
      : wasDeclined(model, tracing, notOffered)
        ? 'declined'
        : 'no-step-left',
  };
}
