import { z } from 'zod';
import { mayNotOpen } from '../../job/bench/mayNotOpen.ts';
import { movesAsItCame } from '../../job/movesAsItCame.ts';
import { isThere, lastWorked, returnMoves } from '../../job/triedArrangements.ts';
import { isUnderWay } from '../../job/work.ts';
import { AT_THE_BENCH, OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zId, zJobId, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
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
    const running = job.work.find((work) => isUnderWay(work));
    if (running) return refuse('already-at-work', { what: running.what, since: running.startedAt });
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
    const why = { by: 'back-to-worked', run: worked.run } as const;
    for (const { part, to } of back.moves) {
      const refusal = moveFromWhereItIs(unit, part, to, why, asking);
      if (refusal) return { ok: false, refusal };
    }
    if (back.plugIn.length > 0) unit.add(`machine:${machine.id}`, 'plugged-in', { slots: back.plugIn });
    if (back.unplug.length > 0) unit.add(`machine:${machine.id}`, 'unplugged', { slots: back.unplug });
    return unit.accept();
  },
  () => ({ papers: ['part-tag'] }),
);

/** Back to how it came: what is ours to its bin, what is the owner's to where it belongs, all moves at once or none. */
export const goBackAsItCame = jobCommand(
  'go-back-as-it-came',
  z.strictObject({ job: zJobId }),
  OPEN_STAGES,
  (view, _input, asking) => {
    const unit = openUnitOfWork(view, asking);
    for (const { part, to } of view.machine ? movesAsItCame(view.machine, [...view.parts.values()]) : []) {
      const refusal = moveFromWhereItIs(unit, part, to, { by: 'closing-up' }, asking);
      if (refusal) return { ok: false, refusal };
    }
    return unit.accept();
  },
  () => ({ papers: ['part-tag'] }),
);
