import { z } from 'zod';
import { STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zJobId, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/**
 * The keeping of a dead part ends: it goes back to the owner, at any time, or is recycled, once the day has come up to
 * which the owner let it be kept. One that holds data is never only recycled.
 */
export const endKeeping = jobCommand(
  'end-keeping',
  z.strictObject({ job: zJobId, part: zPartId, as: z.enum(['recycled', 'given-back']) }),
  STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const names = { part: part.id, tag: part.tag, name: part.name };
    if (part.place.at !== 'kept') return refuse('not-kept', { ...names, is: part.place, since: part.since });
    if (input.as === 'recycled' && part.place.until > asking.at)
      return refuse('kept-until', { ...names, until: part.place.until });
    const unit = openUnitOfWork(view, asking);
    const refusal = unit.move({
      part: part.id,
      from: part.place,
      to: input.as === 'recycled' ? { at: 'gone', why: 'recycled' } : { at: 'with-owner' },
      job: input.job,
      why: { by: 'owner-word', answer: input.as },
    });
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  ({ part }) => ({ parts: [part] }),
);
