import { z } from 'zod';
import { heldFor, partOut } from '../../custody/move/moveRefusals.ts';
import { shopCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zMinor, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/**
 * A part of ours is sold over the counter or given away, outside any job; what moves with it as one goes with it. What
 * is held for a job, out, or known to be dead is not sold.
 */
export const sellPart = shopCommand(
  'sell-part',
  z.strictObject({ part: zPartId, as: z.enum(['sold', 'given']), priceMinor: zMinor }),
  ({ part }) => ({ parts: [part] }),
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    const names = { part: part.id, tag: part.tag, name: part.name };
    if (part.belongs.to !== 'shop') return refuse('not-ours-to-move', names);
    if (part.place.at === 'with')
      return refuse('split-it-first', { ...names, carrier: view.parts.get(part.place.part)?.name });
    if (part.place.at !== 'bin' && part.place.at !== 'rig' && part.place.at !== 'bench')
      return { ok: false, refusal: partOut(part, part.title?.job ?? null) };
    const all = [part, ...part.riders.flatMap((id) => view.parts.get(id) ?? [])];
    const held = all.find((one) => one.reservedFor !== null);
    if (held) return { ok: false, refusal: heldFor(held) };
    const dead = all.find((one) => one.standing.is === 'dead');
    if (dead && input.as === 'sold') return refuse('part-dead', { part: dead.id, tag: dead.tag, name: dead.name });
    const unit = openUnitOfWork(view, asking);
    for (const one of all.toReversed()) {
      const refusal = unit.move({
        part: one.id,
        from: one.place,
        to: { at: 'gone', why: input.as },
        job: null,
        why: { by: 'sale', priceMinor: one === part && input.as === 'sold' ? input.priceMinor : 0 },
      });
      if (refusal) return { ok: false, refusal };
    }
    return unit.accept();
  },
);
