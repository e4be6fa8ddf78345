import { z } from 'zod';
import { isOpen } from '../../approval/question.ts';
import { arrangementOfProof, arrangementOfStep } from '../../bench/arrangement.ts';
import { loanerStanding } from '../../bench/tracingCase.ts';
import type { View } from '../../entries/view.ts';
import type { PartId } from '../../ids.ts';
import { clockedWork } from '../../job/bench/clockedWork.ts';
import { mayNotOpen } from '../../job/bench/mayOpen.ts';
import type { Job } from '../../job/job.ts';
import { limitRefusal, minutesBeyondWord, withWorkDone } from '../../job/money/withinWord.ts';
import type { TriedArrangement } from '../../job/triedArrangement.ts';
import { isUnderWay, type UsedLoaner, type Work } from '../../job/work.ts';
import { personal } from '../../journal/personal.ts';
import type { Refusal } from '../../refusal.ts';
import { AT_THE_BENCH, OPEN_STAGES } from '../../stage.ts';
import { type Minutes, minutes } from '../../time.ts';
import { areFoundTogether } from '../../tracing/live/cameOf.ts';
import { COULD_NOT } from '../../tracing/live/couldNot.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zMinutes, zPartId, zReading, zText } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { clockRefusal } from './clockRefusal.ts';
import { giveHandsBack, takeHands } from './hands.ts';
import { movesAtFinish, movesAtStart, roundsLeft, takenOut, unplugsAtStart } from './stepMoves.ts';

const zKindOfWork = z.enum(['step', 'fitting', 'proof', 'cleaning', 'handling', 'own-proof']);
const zUse = z.strictObject({
  loaner: zPartId.nullable(),
  slots: z.array(zId).max(16),
  parts: z.array(zPartId).max(40),
});

export const zStart = z.strictObject({
  job: zJobId,
  kind: zKindOfWork,
  what: zId,
  startedAt: zEpoch,
  tray: zLine,
  use: zUse,
  /** The technician's own word for passing a gate, with the reason; null keeps the gate. */
  ownWord: zText.nullable(),
});

/** What starting and ending work looks at: the asker's other work, the parts named, tags for what comes out. */
export const aboutWork = ({ use }: { readonly use: z.infer<typeof zUse> }) => ({
  hands: true,
  parts: [...use.parts, ...(use.loaner ? [use.loaner] : [])],
  papers: ['part-tag'],
});

/**
 * Starts a piece of work: a timer that is an entry, so it survives. A step is started only with the consents it
 * needs, its gates passed, within the limit; its moves out of and into the machine and what it unplugs are written with
 * it, or nothing is.
 */
export const startWork = jobCommand('start-work', zStart, [...AT_THE_BENCH, 'ready'], decideStart, aboutWork);

export function decideStart(
  view: View & { readonly job: Job },
  input: z.infer<typeof zStart>,
  asking: Asking,
): Decision {
  const problem = startProblem(view, input, asking);
  if (problem) return problem;
  const book = openUnitOfWork(view, asking);
  if (view.job.stage === 'taken-in' && input.kind === 'step') book.enter('first-power-on', 'first-step');
  takeHands(book, asking, input.startedAt);
  const run = asking.newId();
  const rules = input.kind === 'step' ? asking.tracing.rules(input.what) : null;
  const moves = rules && { book, asking, rules, use: input.use, run, tray: input.tray };
  const took = moves ? takenOut(moves) : [];
  book.add(`job:${input.job}`, 'work-started', {
    run,
    kind: input.kind,
    what: input.what,
    startedAt: input.startedAt,
    took,
    loaners: usedLoaners(view, input.use.loaner),
    ...(input.ownWord !== null && { ownWord: personal('record', view.job.owner, input.ownWord) }),
  });
  const refusal = moves && (movesAtStart(moves, took) ?? unplugsAtStart(moves));
  if (refusal) return { ok: false, refusal };
  return book.accept();
}

function startProblem(
  view: View & { readonly job: Job },
  input: z.infer<typeof zStart>,
  asking: Asking,
): Decision | null {
  const { job } = view;
  const clock = clockRefusal(null, input.startedAt, asking);
  if (clock) return { ok: false, refusal: clock };
  if (job.stage === 'ready' && input.kind !== 'handling')
    return refuse('not-at-this-stage', { command: 'start-work', stage: job.stage, allowed: AT_THE_BENCH });
  const running = job.work.find((work) => work.by === asking.by && isUnderWay(work));
  if (running) return refuse('already-at-work', { what: running.what, since: running.startedAt });
  if (
    job.questions.some((question) => isOpen(question) && question.kind !== 'go-on') &&
    job.stage === 'owners-word-needed'
  )
    return refuse('word-needed', { needs: ['answer'] });
  const closed = asksTheOwner(input, asking) ? null : mayNotOpen(job);
  if (closed) return { ok: false, refusal: closed };
  if (job.left && !job.left.confirmed) return refuse('left-like-this-first', { doNotPower: job.left.doNotPower });
  const beyond = beyondWord(job, input, asking);
  if (beyond) return { ok: false, refusal: beyond };
  if (input.kind !== 'step') return null;
  if (!asking.tracing.rules(input.what)) return refuse('no-such-step', { step: input.what });
  const missing = asking.tracing.lacking(view, input.what);
  if (missing.length > 0) return refuse('consent-missing', { step: input.what, needs: missing });
  const gates = asking.tracing.gates(view, input.what, input.use.loaner);
  const forNobody = gates.filter((one) => !one.ownWord);
  if (forNobody.length > 0) return refuse('gate-for-nobody', { step: input.what, gates: forNobody });
  if (gates.length > 0 && input.ownWord === null) return refuse('gate-not-passed', { step: input.what, gates });
  return null;
}

/** A step that only asks the owner for a word touches nothing of theirs. */
const asksTheOwner = ({ kind, what }: z.infer<typeof zStart>, { tracing }: Asking): boolean =>
  kind === 'step' && Object.values(tracing.rules(what)?.gives ?? {}).some((words) => words.length > 0);

/** A minute at the least: of work that is no step nobody says beforehand how long it takes. */
const LEAST = minutes(1);

/** Work that the owner's word does not cover is not begun; handling, such as putting back what is theirs, always is. */
function beyondWord(job: Job, input: z.infer<typeof zStart>, asking: Asking): Refusal | null {
  if (input.kind === 'handling' || input.kind === 'own-proof') return null;
  const expected = input.kind === 'step' ? asking.tracing.rules(input.what)?.handsOn : LEAST;
  const piece = { run: '', kind: input.kind, what: input.what };
  return limitRefusal(job, withWorkDone(job, piece, expected ?? LEAST), input.what);
}

export const zFinish = z.strictObject({
  job: zJobId,
  run: zId,
  endedAt: zEpoch,
  outcome: zId,
  /** What else was found, of a step that looks at several places in one go. */
  also: z.array(zId).max(20).exactOptional(),
  handsOn: zMinutes,
  waiting: zMinutes,
  /** The minutes are somebody's word and not the clock's: a clock that was forgotten does not cut them. */
  said: z.boolean().exactOptional(),
  readings: z.array(zReading).max(40),
  passed: z.boolean().nullable(),
  note: zText.nullable(),
  endsWith: z.enum(['as-before', 'out', 'loaner-inside', 'last-slots']).nullable(),
  use: zUse,
  tray: zLine,
});

/** Ends a piece of work with what came of it, its claimed minutes and its readings, and writes the moves that follow. */
export const finishWork = jobCommand('finish-work', zFinish, OPEN_STAGES, decideFinish, aboutWork);

export function decideFinish(
  view: View & { readonly job: Job },
  input: z.infer<typeof zFinish>,
  asking: Asking,
): Decision {
  const work = view.job.work.find((one) => one.run === input.run);
  if (!work || work.endedAt !== null) return refuse('no-such-work', { run: input.run });
  const clock = clockRefusal(work.startedAt, input.endedAt, asking);
  if (clock) return { ok: false, refusal: clock };
  const rules = work.kind === 'step' ? asking.tracing.rules(work.what) : null;
  if (rules && !rules.outcomes.includes(input.outcome))
    return refuse('no-such-outcome', { step: work.what, outcome: input.outcome, outcomes: rules.outcomes });
  const { also = [] } = input;
  if (also.length > 0 && !(rules && areFoundTogether(rules, [input.outcome, ...also])))
    return refuse('not-found-together', { step: work.what, outcomes: [input.outcome, ...also] });
  if (rules && input.outcome === COULD_NOT && !input.note?.trim())
    return refuse('could-not-without-reason', { step: work.what });
  if (work.kind === 'proof' && input.passed === null) return refuse('proof-without-result', { proof: work.what });
  const book = openUnitOfWork(view, asking);
  const endsWith = input.endsWith ?? (rules?.handling.putsBack === 'same-slot' ? 'as-before' : 'out');
  const write = (tried: TriedArrangement | null) =>
    void (tried && book.add(`job:${input.job}`, 'arrangement-tried', tried));
  if (work.kind === 'proof') write(arrangementOfProof(view, work, input.passed === true));
  if (rules) {
    const use = { ...input.use, loaner: input.use.loaner ?? work.loaners[0]?.id ?? null };
    const moves = { book, asking, rules, use, run: work.run, tray: input.tray };
    if (roundsLeft(moves, work).length === 0) write(arrangementOfStep(view, rules, work, input.outcome));
    const refusal = movesAtFinish(moves, work, endsWith);
    if (refusal) return { ok: false, refusal };
  }
  const { run, endedAt, outcome, waiting, readings, passed, note } = input;
  const { handsOn, forgotten } = believed(view.shop, work, input);
  const ours = minutesBeyondWord(view.job, work, handsOn);
  book.add(`job:${input.job}`, 'work-finished', {
    run,
    endedAt,
    outcome,
    ...(also.length > 0 && { also }),
    handsOn,
    ...(ours > 0 && { ours }),
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
  if (work.by === asking.by) giveHandsBack(book, asking, endedAt);
  return book.accept();
}

/** The minutes that count: those said, or the clock's as far as it is believed. What was cut is flagged, not dropped. */
function believed(
  { settings }: View['shop'],
  work: Work,
  { endedAt, handsOn, said }: z.infer<typeof zFinish>,
): { readonly handsOn: Minutes; readonly forgotten?: NonNullable<Work['forgotten']> } {
  const clock = clockedWork(work, endedAt, settings);
  const whole = minutes(Math.round(clock.handsOn));
  if (clock.forgotten === null || handsOn <= whole) return { handsOn };
  return { handsOn: said ? handsOn : whole, forgotten: { because: clock.forgotten, ran: clock.ran } };
}

function usedLoaners(view: View, id: PartId | null): readonly UsedLoaner[] {
  const part = id === null ? undefined : view.parts.get(id);
  const standing = part && loanerStanding(part);
  return part && standing ? [{ id: part.id, kind: part.kind, standing }] : [];
}

/** Strikes a piece of work out: it stays in the record, counts for nothing, and is not charged. Its moves stay real. */
export const strikeWork = jobCommand(
  'strike-work',
  z.strictObject({ job: zJobId, run: zId, why: zLine }),
  OPEN_STAGES,
  (view, { job, run, why }) => {
    const work = view.job.work.find((one) => one.run === run);
    if (!work || work.struck) return refuse('no-such-work', { run });
    return accept({ stream: `job:${job}`, kind: 'work-struck', body: { run, why } });
  },
);
