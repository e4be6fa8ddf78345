import { z } from 'zod';
import { backFromLending } from '../bench/parts/moveOut.ts';
import { shopCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zLine, zPartId, zPlace } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/** Moves a shop part that is in no job: to another bin, into the rig, to a supplier. */
export const moveShopPart = shopCommand(
  'move-shop-part',
  z.strictObject({ part: zPartId, from: zPlace, to: zPlace, says: zLine.nullable() }),
  ({ part, from, to }) => ({
    parts: [part, ...(to.at === 'with' ? [to.part] : [])],
    machine: from.at === 'slot' ? from.machine : undefined,
  }),
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    if (part.belongs.to !== 'shop') return refuse('not-ours-to-move', { part: part.id, name: part.name });
    const unit = openUnitOfWork(view, asking);
    const refusal = unit.move({
      part: part.id,
      from: input.from,
      to: input.to,
      job: null,
      why: input.says ? { by: 'righting', says: input.says } : { by: 'hand' },
    });
    if (refusal) return { ok: false, refusal };
    if (part.title?.as === 'lent' && unit.view().parts.get(part.id)?.title === null) backFromLending(unit, part);
    return unit.accept();
  },
);
