import { z } from 'zod';
import type { PartId } from '../../../ids.ts';
import { isUnderWay } from '../../../job/work.ts';
import { OPEN_STAGES } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zId, zJobId, zLine } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from '../parts/moveOut.ts';
import { giveHandsBack } from './hands.ts';
import { movesAtFinish } from './stepMoves.ts';

/**
 * A step was begun by mistake: it is struck, what its start moved or unplugged in the ledger goes back where it was, all of
 * it or nothing, and no minute of it is charged. Refused: `no-such-work`, and every move that may not be.
 */
export const takeBackStart = jobCommand(
  'take-back-start',
  z.strictObject({ job: zJobId, run: zId, tray: zLine, why: zLine }),
  OPEN_STAGES,
  (view, { job: id, run, tray, why }, asking) => {
    const work = view.job.work.find((one) => one.run === run);
    if (!work || !isUnderWay(work)) return refuse('no-such-work', { run });
    const unit = openUnitOfWork(view, asking);
    const rules = work.kind === 'step' ? asking.tracing.rules(work.what) : null;
    const use = { loaner: work.loaners[0]?.id ?? null, slots: [], parts: [] };
    const refusal = rules && movesAtFinish({ unit, asking, rules, use, run, tray }, work, 'as-before');
    if (refusal) return { ok: false, refusal };
    const { machine } = view;
    const off = work.unplugged ?? [];
    if (machine && off.length > 0) {
      for (const slot of off) {
        const part: PartId | undefined = machine.belongsIn[slot];
        if (part === undefined || unit.view().parts.get(part)?.place.at !== 'tray') continue;
        const to = { at: 'slot', machine: machine.id, slot } as const;
        const stays = moveFromWhereItIs(unit, part, to, { by: 'hand' }, asking);
        if (stays) return { ok: false, refusal: stays };
      }
      unit.add(`machine:${machine.id}`, 'plugged-in', { slots: off });
    }
    unit.add(`job:${id}`, 'work-struck', { run, why });
    if (work.by === asking.by) giveHandsBack(unit, asking, asking.at);
    return unit.accept();
  },
  () => ({ hands: true, papers: ['part-tag'] }),
);
