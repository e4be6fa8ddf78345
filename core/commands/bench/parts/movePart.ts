import { z } from 'zod';
import type { MoveReason } from '../../../custody/ledger.ts';
import { notThere } from '../../../custody/move/moveRefusals.ts';
import { type Place, samePlace } from '../../../custody/place.ts';
import type { PartId } from '../../../ids.ts';
import { mayNotOpen } from '../../../job/bench/mayNotOpen.ts';
import { OPEN_STAGES } from '../../../stage.ts';
import { jobCommand } from '../../kernel/command.ts';
import { refuse } from '../../kernel/decision.ts';
import { zJobId, zLine, zPartId, zPlace } from '../../kernel/fields.ts';
import { openUnitOfWork } from '../../kernel/unitOfWork.ts';
import { moveFromWhereItIs } from './moveOut.ts';

const zWhy = z.enum(['hand', 'wrong-slot-put-right', 'board-has-only-these', 'closing-up', 'righting']);

/** Moves one part by hand, drag or scan. The place it leaves is named: it is refused when the part is not there. */
export const movePart = jobCommand(
  'move-part',
  z.strictObject({
    job: zJobId,
    part: zPartId,
    from: zPlace,
    to: zPlace,
    why: zWhy,
    says: zLine.nullable(),
  }),
  OPEN_STAGES,
  (view, input, asking) => {
    const part = view.parts.get(input.part);
    if (!part) return refuse('no-such-part', { part: input.part });
    if (!samePlace(part.place, input.from)) return { ok: false, refusal: notThere(part, input.from) };
    const comesOut = part.belongs.to === 'owner' && part.place.at === 'slot' && input.to.at !== 'slot';
    const closed = comesOut ? mayNotOpen(view.job) : null;
    if (closed) return { ok: false, refusal: closed };
    const unit = openUnitOfWork(view, asking);
    const why = whyMoved(input.why, input.says);
    const refusal = moveFromWhereItIs(unit, input.part, input.to, why, asking);
    return refusal ? { ok: false, refusal } : unit.accept();
  },
  (input) => ({ parts: [input.part, ...carrierIn(input.to)], papers: ['part-tag'] }),
);

/** A move by hand may say why it does not go into the slot recorded; one that rights an entry has to say what it rights. */
function whyMoved(by: z.infer<typeof zWhy>, says: string | null): MoveReason {
  if (by === 'righting') return { by, says: says ?? '' };
  return by === 'hand' && says !== null ? { by, says } : { by };
}

/** The part that a place is with: looked at before anything joins it. */
const carrierIn = (place: Place): readonly PartId[] => (place.at === 'with' ? [place.part] : []);
