import { z } from 'zod';
import { isOpen } from '../../../approval/question.ts';
import { loanerProof } from '../../../bench/tracingCase.ts';
import type { OpenGate } from '../../../bench/tracingDoor.ts';
import type { View } from '../../../entries/view.ts';
import type { PartId } from '../../../ids.ts';
import { mayNotOpen } from '../../../job/bench/mayNotOpen.ts';
import type { Job } from '../../../job/job.ts';
import { limitRefusal, withWorkDone } from '../../../job/money/withinWord.ts';
import { isUnderWay, type UsedLoaner } from '../../../job/work.ts';
import { personal } from '../../../journal/personal.ts';
import type { Refusal } from '../../../refusal.ts';
import { AT_THE_BENCH } from '../../../stage.ts';
import { minutes } from '../../../time.ts';
import type { Asking } from '../../kernel/asking.ts';
import { jobCommand } from '../../kernel/command.ts';
import { type Decision, refuse } from '../../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine, zText } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { noneOfThisMachine } from '../noneOfThisMachine.ts';
import { clockRefusal } from './clockRefusal.ts';
import { takeHands } from './hands.ts';
import { movesAtStart, takenOut, toUnplug, unplugsAtStart } from './stepMoves.ts';
import { aboutWork, zUse } from './workUse.ts';

const zKindOfWork = z.enum(['step', 'fitting', 'proof', 'cleaning', 'handling', 'own-proof']);

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

/**
 * Starts a piece of work: a timer that is an entry, so it survives. A step is started only with the consents it
 * needs, its gates passed, within the limit; its moves out of and into the machine and what it unplugs are written with
 * it, or nothing is.
 */
export const startWork = jobCommand('start-work', zStart, [...AT_THE_BENCH, 'ready'], decideStart, aboutWork);

/**
 * Decides `start-work`, also as the first half of a step that is logged in one; `startedAt` is ms of the epoch. Refuses what
 * lacks a consent or a gate, passes the limit, or is begun beside other work of the same hands, and every move that may
 * not be.
 */
export function decideStart(
  view: View & { readonly job: Job },
  input: z.infer<typeof zStart>,
  asking: Asking,
): Decision {
  const problem = startProblem(view, input, asking);
  if (problem) return problem;
  const unit = openUnitOfWork(view, asking);
  if (view.job.stage === 'taken-in' && input.kind === 'step') unit.enter('first-power-on', 'first-step');
  takeHands(unit, asking, input.startedAt);
  const run = asking.newId();
  const rules = input.kind === 'step' ? asking.tracing.rules(input.what) : null;
  const moves = rules && { unit, asking, rules, use: input.use, run, tray: input.tray };
  const took = moves ? takenOut(moves) : [];
  const off = moves ? toUnplug(moves, took) : [];
  unit.add(`job:${input.job}`, 'work-started', {
    run,
    kind: input.kind,
    what: input.what,
    startedAt: input.startedAt,
    took,
    loaners: usedLoaners(view, input.use.loaner),
    ...(off.length > 0 && { unplugged: off }),
    ...(input.ownWord !== null && { ownWord: personal('record', view.job.owner, input.ownWord) }),
  });
  const refusal = moves && (movesAtStart(moves, took) ?? unplugsAtStart(moves, off));
  if (refusal) return { ok: false, refusal };
  return unit.accept();
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
  const unknown = closed ?? noneOfThisMachine(view, input.use);
  if (unknown) return { ok: false, refusal: unknown };
  if (job.left && !job.left.confirmed) return refuse('left-like-this-first', { doNotPower: job.left.doNotPower });
  const beyond = beyondWord(job, input, asking);
  if (beyond) return { ok: false, refusal: beyond };
  if (input.kind !== 'step') return gateProblem(input, asking.tracing.gatesOfWork(view, input.kind, input.what));
  if (!asking.tracing.rules(input.what)) return refuse('no-such-step', { step: input.what });
  const missing = asking.tracing.lacking(view, input.what);
  if (missing.length > 0) return refuse('consent-missing', { step: input.what, needs: missing });
  return gateProblem(input, asking.tracing.gates(view, input.what, input.use.loaner));
}

/** What holds it: some of it nobody opens, the rest the technician's own word with its reason. */
function gateProblem({ what, ownWord }: z.infer<typeof zStart>, gates: readonly OpenGate[]): Decision | null {
  const forNobody = gates.filter((one) => !one.ownWord);
  if (forNobody.length > 0) return refuse('gate-for-nobody', { step: what, gates: forNobody });
  return gates.length > 0 && ownWord === null ? refuse('gate-not-passed', { step: what, gates }) : null;
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

function usedLoaners(view: View, id: PartId | null): readonly UsedLoaner[] {
  const part = id === null ? undefined : view.parts.get(id);
  const standing = part && loanerProof(part);
  return part && standing ? [{ id: part.id, kind: part.kind, standing }] : [];
}
