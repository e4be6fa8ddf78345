import { z } from 'zod';
import { personal } from '../../journal/personal.ts';
import { STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zId, zJobId, zLine, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper, nextNumber } from '../papers/issue.ts';

/**
 * Destroys a part that holds data, in one command: by the owner's word for it, with the technique and tool, who did it
 * and who looked it over; out comes the certificate, whose number the part's last place holds. What cannot be brought
 * back is asked for by name, never taken from the sheet's other lines.
 */
export const destroyPart = jobCommand(
  'destroy-part',
  z.strictObject({
    job: zJobId,
    part: zPartId,
    medium: z.strictObject({ maker: zLine, model: zLine, serial: zLine, type: zLine }),
    technique: zLine,
    tool: zLine,
    checked: zLine,
    withoutErrors: z.boolean().optional(),
    verifiedBy: zId,
  }),
  STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const names = { part: part.id, tag: part.tag, name: part.name };
    if (part.belongs.to !== 'owner' || !part.dataBearing) return refuse('holds-no-data', names);
    if (input.withoutErrors === false) return refuse('check-found-errors', names);
    if (part.place.at === 'slot') return refuse('take-it-out-first', { ...names, slot: part.place.slot });
    if (!view.shop.staff.some((one) => one.id === input.verifiedBy))
      return refuse('nobody-of-the-shop', { name: input.verifiedBy });
    const unit = openUnitOfWork(view, asking);
    const certificate = nextNumber(unit, 'media-sanitisation-certificate', asking);
    const refusal = unit.move({
      part: part.id,
      from: part.place,
      to: { at: 'gone', why: 'destroyed', certificate },
      job: input.job,
      why: { by: 'owner-word', answer: 'destroy' },
    });
    if (refusal) return { ok: false, refusal };
    const { serial, ...medium } = input.medium;
    unit.add(`job:${input.job}`, 'destroyed', {
      part: part.id,
      medium,
      serial: personal('readings', view.job.owner, serial),
      technique: input.technique,
      tool: input.tool,
      checked: input.checked,
      ...(input.withoutErrors !== undefined && { withoutErrors: input.withoutErrors }),
      verifiedBy: input.verifiedBy,
      certificate,
    });
    issuePaper(unit, 'media-sanitisation-certificate', asking, part.id);
    return unit.accept();
  },
  ({ part }) => ({ parts: [part], papers: ['media-sanitisation-certificate'] }),
);
