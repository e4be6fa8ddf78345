import { z } from 'zod';
import { OPEN_STAGES } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zJobId, zPartId, zPlace } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from './moveOut.ts';

/** A dead part goes where the owner's word says: kept until its end date, back with the owner, to the maker, scrapped. */
export const putAway = jobCommand(
  'put-away',
  z.strictObject({ job: zJobId, part: zPartId, to: zPlace }),
  OPEN_STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const unit = openUnitOfWork(view, asking);
    const refusal = moveFromWhereItIs(unit, part.id, input.to, { by: 'owner-word', answer: input.to.at }, asking);
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  (input) => ({ parts: [input.part], papers: ['part-tag'] }),
);
