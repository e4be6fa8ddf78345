import { z } from 'zod';
import type { MoveReason } from '../../../custody/ledger.ts';
import type { Machine } from '../../../custody/machine.ts';
import { mayNotOpen } from '../../../job/bench/mayNotOpen.ts';
import type { Job } from '../../../job/job.ts';
import { movesAsItCame } from '../../../job/movesAsItCame.ts';
import { isThere, lastWorked, nothingToDo, type ReturnMoves, returnMoves } from '../../../job/triedArrangements.ts';
import { isUnderWay } from '../../../job/work.ts';
import type { Refusal } from '../../../refusal.ts';
import { AT_THE_BENCH, OPEN_STAGES } from '../../../stage.ts';
import type { Asking } from '../../kernel/asking.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zId, zJobId, zLine } from '../../kernel/fields.ts';
import { openUnitOfWork, type UnitOfWork } from '../../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from './moveOut.ts';

/**
 * Back to the last arrangement that worked, all its moves at once or none. The run that was shown is named, so that
 * nobody agrees to moves they have not read.
 */
export const goBackToWorked = jobCommand(
  'go-back-to-worked',
  z.strictObject({ job: zJobId, run: zId, tray: zLine }),
  AT_THE_BENCH,
  (view, input, asking) => {
    const { job, machine } = view;
    const worked = lastWorked(job);
    if (!machine || worked?.run !== input.run) return refuse('not-the-last-that-worked', { run: input.run });
    const busy = workUnderWay(job);
    if (busy) return { ok: false, refusal: busy };
    const closed = mayNotOpen(job);
    if (closed) return { ok: false, refusal: closed };
    const back = returnMoves(machine, [...view.parts.values()], worked, {
      at: 'tray',
      tray: input.tray,
      job: input.job,
    });
    if (back.outOfReach.length > 0)
      return refuse('arrangement-not-whole', {
        parts: back.outOfReach.map((part) => view.parts.get(part)?.name ?? part),
      });
    if (isThere(back)) return refuse('nothing-to-write');
    const unit = openUnitOfWork(view, asking);
    const refusal = carryBack(unit, machine, back, { by: 'back-to-worked', run: worked.run }, asking);
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  () => ({ papers: ['part-tag'] }),
);

/**
 * Back to how it came, all at once or not at all: what is ours to its bin, the owner's parts where they belong, every plug
 * in. What hands cannot reach stays, as the screen says beforehand. Refused while work is under way.
 */
export const goBackAsItCame = jobCommand(
  'go-back-as-it-came',
  z.strictObject({ job: zJobId, tray: zLine }),
  OPEN_STAGES,
  ({ job, machine, parts, ...view }, { tray }, asking) => {
    if (!machine) return refuse('no-such-machine', { machine: job.machine });
    const busy = workUnderWay(job);
    if (busy) return { ok: false, refusal: busy };
    const back = movesAsItCame(machine, [...parts.values()], { at: 'tray', tray, job: job.id });
    if (nothingToDo(back)) return refuse('nothing-to-write');
    const unit = openUnitOfWork({ ...view, job, machine, parts }, asking);
    const refusal = carryBack(unit, machine, back, { by: 'closing-up' }, asking);
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  () => ({ papers: ['part-tag'] }),
);

/** Nobody takes a machine apart under somebody's hands. */
function workUnderWay({ work }: Job): Refusal | null {
  const running = work.find((one) => isUnderWay(one));
  return running ? { refused: 'already-at-work', what: running.what, since: running.startedAt } : null;
}

/** Writes moves back, in their order, and then what is plugged in or off; or why one of them may not be. */
function carryBack(
  unit: UnitOfWork,
  { id }: Machine,
  { moves, plugIn, unplug }: ReturnMoves,
  why: MoveReason,
  asking: Asking,
): Refusal | null {
  for (const { part, to } of moves) {
    const refusal = moveFromWhereItIs(unit, part, to, why, asking);
    if (refusal) return refusal;
  }
  if (plugIn.length > 0) unit.add(`machine:${id}`, 'plugged-in', { slots: plugIn });
  if (unplug.length > 0) unit.add(`machine:${id}`, 'unplugged', { slots: unplug });
  return null;
}
