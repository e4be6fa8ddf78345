import { z } from 'zod';
import { arrangementOfProof, arrangementOfStep } from '../../../bench/arrangement.ts';
import type { View } from '../../../entries/view.ts';
import { clockedWork } from '../../../job/bench/clockedWork.ts';
import type { Job } from '../../../job/job.ts';
import { minutesBeyondWord } from '../../../job/money/withinWord.ts';
import type { TriedArrangement } from '../../../job/triedArrangement.ts';
import { MINUTES_BY, type Work } from '../../../job/work.ts';
import { personal } from '../../../journal/personal.ts';
import { OPEN_STAGES } from '../../../stage.ts';
import { type Minutes, minutes } from '../../../time.ts';
import { areFoundTogether } from '../../../tracing/live/cameOf.ts';
import { COULD_NOT } from '../../../tracing/live/couldNot.ts';
import type { Asking } from '../../kernel/asking.ts';
import { jobCommand } from '../../kernel/command.ts';
import { type Decision, refuse } from '../../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zMinutes, zReading, zText } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { noneOfThisMachine } from '../noneOfThisMachine.ts';
import { clockRefusal } from './clockRefusal.ts';
import { giveHandsBack } from './hands.ts';
import { movesAtFinish, roundsLeft } from './stepMoves.ts';
import { aboutWork, zUse } from './workUse.ts';

export const zFinish = z.strictObject({
  job: zJobId,
  run: zId,
  endedAt: zEpoch,
  outcome: zId,
  /** What else was found, of a step that looks at several places in one go. */
  also: z.array(zId).max(20).exactOptional(),
  handsOn: zMinutes,
  waiting: zMinutes,
  /** Whose the hands-on minutes are: the clock's, where left out; those typed by hand a clock that was forgotten does not cut. */
  minutesBy: z.enum(MINUTES_BY).exactOptional(),
  readings: z.array(zReading).max(40),
  passed: z.boolean().nullable(),
  note: zText.nullable(),
  endsWith: z.enum(['as-before', 'out', 'loaner-inside', 'last-slots']).nullable(),
  use: zUse,
  tray: zLine,
});

/** Ends a piece of work with what came of it, its claimed minutes and its readings, and writes the moves that follow. */
export const finishWork = jobCommand('finish-work', zFinish, OPEN_STAGES, decideFinish, aboutWork);

/**
 * Decides `finish-work`, also as the second half of a step that is logged in one; `endedAt` is ms of the epoch, `handsOn` and `waiting` minutes.
 * Refuses work that is not under way, an outcome the step does not have, a step that could not be done without a reason, a
 * proof without its result, a time the clock does not allow, and every move that may not be.
 */
export function decideFinish(
  view: View & { readonly job: Job },
  input: z.infer<typeof zFinish>,
  asking: Asking,
): Decision {
  const work = view.job.work.find((one) => one.run === input.run);
  if (!work || work.endedAt !== null) return refuse('no-such-work', { run: input.run });
  const clock = clockRefusal(work.startedAt, input.endedAt, asking);
  const wrong = clock ?? noneOfThisMachine(view, input.use);
  if (wrong) return { ok: false, refusal: wrong };
  const rules = work.kind === 'step' ? asking.tracing.rules(work.what) : null;
  if (rules && !rules.outcomes.includes(input.outcome))
    return refuse('no-such-outcome', { step: work.what, outcome: input.outcome, outcomes: rules.outcomes });
  const { also = [] } = input;
  if (also.length > 0 && !(rules && areFoundTogether(rules, [input.outcome, ...also])))
    return refuse('not-found-together', { step: work.what, outcomes: [input.outcome, ...also] });
  if (rules && input.outcome === COULD_NOT && !input.note?.trim())
    return refuse('could-not-without-reason', { step: work.what });
  if (work.kind === 'proof' && input.passed === null) return refuse('proof-without-result', { proof: work.what });
  const unit = openUnitOfWork(view, asking);
  const endsWith = input.endsWith ?? (rules?.handling.putsBack === 'same-slot' ? 'as-before' : 'out');
  const write = (tried: TriedArrangement | null) =>
    void (tried && unit.add(`job:${input.job}`, 'arrangement-tried', tried));
  if (work.kind === 'proof') write(arrangementOfProof(view, work, input.passed === true));
  if (rules) {
    const use = { ...input.use, loaner: input.use.loaner ?? work.loaners[0]?.id ?? null };
    const moves = { unit, asking, rules, use, run: work.run, tray: input.tray };
    if (roundsLeft(moves, work).length === 0) write(arrangementOfStep(view, rules, work, input.outcome));
    const refusal = movesAtFinish(moves, work, endsWith);
    if (refusal) return { ok: false, refusal };
  }
  const { run, endedAt, outcome, waiting, readings, passed, note } = input;
  const { handsOn, forgotten } = believed(view.shop, work, input);
  const unbilled = minutesBeyondWord(view.job, work, handsOn);
  unit.add(`job:${input.job}`, 'work-finished', {
    run,
    endedAt,
    outcome,
    ...(also.length > 0 && { also }),
    handsOn,
    ...(unbilled > 0 && { ours: unbilled }),
    waiting,
    ...(forgotten && { forgotten }),
    readings,
    passed,
    kind: work.kind,
    what: work.what,
    startedAt: work.startedAt,
    loaners: work.loaners,
    took: work.took,
    leftOut: rules ? asking.tracing.leftOut(view, work.what, endsWith !== 'as-before') : [],
    note: note === null ? null : personal('record', view.job.owner, note),
  });
  if (work.by === asking.by) giveHandsBack(unit, asking, endedAt);
  return unit.accept();
}

/** The minutes that count: those typed by hand, or the clock's as far as it is believed. What was cut is flagged, not dropped. */
function believed(
  { settings }: View['shop'],
  work: Work,
  { endedAt, handsOn, minutesBy }: z.infer<typeof zFinish>,
): { readonly handsOn: Minutes; readonly forgotten?: NonNullable<Work['forgotten']> } {
  const clock = clockedWork(work, endedAt, settings);
  const whole = minutes(Math.round(clock.handsOn));
  if (clock.forgotten === null || handsOn <= whole) return { handsOn };
  return { handsOn: minutesBy === 'hand' ? handsOn : whole, forgotten: { because: clock.forgotten, ran: clock.ran } };
}
