import { at } from '../../../figures/rows.ts';
import { timesDone } from '../gates/gates.ts';
import { standsNow } from '../gates/standsNow.ts';
import { knownStep, WATCH_START } from '../model/special.ts';
import { groupsSeen } from '../readGroups.ts';
import type { FaultModel, TracingCase } from '../types.ts';
import type { HeldStep, LiveProblem } from './toProblem.ts';

/** A long trial done more often than this shows no more. Common practice, no source. */
const TWICE = 2;
/** A trial less likely than this to fail is not done for its own sake once one was quiet: common practice, no source. */
const WORTH_A_TRIAL = 0.25;

/**
 * What is done before a job is handed over although nothing more is planned: the machine is switched on here once, and one
 * that works now, or fails only now and then, is tried to make fail. Its place in the problem's steps; -1: nothing.
 */
export function seenToFailFirst(
  model: FaultModel,
  tracing: TracingCase,
  live: LiveProblem,
  held: readonly HeldStep[],
): number {
  const seen = groupsSeen(model, tracing);
  if (seen.length === 0) {
    const opener = held.find(({ step }) => step.id === WATCH_START)?.firstDo[0]?.id;
    return live.steps.findIndex(({ id }) => id === (opener ?? WATCH_START));
  }
  const nowAndThen = seen.some((group) => model.nowAndThen.groups.includes(group));
  return nowAndThen || standsNow(model, tracing) === 'works' ? mostLikelyToFail(model, live, tracing) : -1;
}

/**
 * Of a machine that fails only now and then: the long trial that shows its fault soonest for its minutes. After a quiet one
 * only such as are likely enough to fail: a machine that fails once a week is not made to fail by a third night. -1: none.
 */
function mostLikelyToFail(model: FaultModel, { problem, steps, own }: LiveProblem, tracing: TracingCase): number {
  const tried = tracing.log.some((entry) => !entry.struck && isLongTrial(model, entry.step));
  let best = { at: -1, worth: 0 };
  for (const [s, step] of steps.entries()) {
    if (!isLongTrial(model, step.id) || timesDone(model, tracing, step) >= TWICE) continue;
    const quiet = own[s]?.chance[step.normal];
    const fails = 1 - (quiet?.reduce((sum, p, w) => sum + p * at(problem.prior, w), 0) ?? 1);
    const worth = fails / (own[s]?.minutes ?? 1);
    if ((tried && fails < WORTH_A_TRIAL) || worth <= best.worth) continue;
    best = { at: s, worth };
  }
  return best.at;
}

function isLongTrial(model: FaultModel, id: string): boolean {
  const step = knownStep(model, id);
  return step?.kind === 'load' && step.exposure !== null && !step.confirming;
}
