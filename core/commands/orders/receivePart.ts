import { z } from 'zod';
import type { Part } from '../../custody/ledger.ts';
import { heldFor } from '../../custody/move/moveRefusals.ts';
import type { View } from '../../entries/view.ts';
import type { Job } from '../../job/job.ts';
import { isLive, lineOf, type Order, orderState } from '../../job/orders/order.ts';
import type { Refusal } from '../../refusal.ts';
import type { Asking } from '../kernel/asking.ts';
import { jobCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { refuse } from '../kernel/decision.ts';
import { zId, zJobId, zMinor, zPartId } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

const zReceived = z.strictObject({
  job: zJobId,
  order: zId,
  as: z.enum(['ordered', 'wrong', 'dead', 'dearer']),
  /** The part in the ledger; null for what was not taken in at the door. */
  part: zPartId.nullable(),
  /** What it costs the owner as it came; left out: as ordered. */
  priceMinor: zMinor.nullable().optional(),
});

/**
 * Checks what came against the order. As ordered, it is held for the job and proved before it is fitted. Dearer than
 * agreed, the job stops for the owner's new word. Wrong or dead on arrival, it goes back to the supplier, and the clock
 * of the supplier's days runs from now.
 */
export const receivePart = jobCommand(
  'receive-part',
  zReceived,
  ['part-on-the-way', 'fitting'],
  decideReceived,
  (input) => ({ parts: input.part === null ? [] : [input.part] }),
);

function decideReceived(
  view: View & { readonly job: Job },
  input: z.infer<typeof zReceived>,
  asking: Asking,
): Decision {
  const order = view.job.orders.find((one) => one.order === input.order);
  if (!order || orderState(order) !== 'on-the-way') return refuse('no-such-order', { order: input.order });
  const part = input.part === null ? null : (view.parts.get(input.part) ?? undefined);
  if (part === undefined) return refuse('no-such-part', { part: input.part });
  const problem = partProblem(view.job, order, part, input.as) ?? priceProblem(view.job, order, input);
  if (problem) return { ok: false, refusal: problem };
  const unit = openUnitOfWork(view, asking);
  unit.add(`job:${input.job}`, 'part-received', {
    order: order.order,
    as: input.as,
    part: part?.id ?? null,
    priceMinor: input.priceMinor ?? order.priceMinor,
  });
  if (part) {
    if (!view.job.parts.includes(part.id)) unit.add(`job:${input.job}`, 'part-joined', { part: part.id });
    if (input.as === 'dead')
      unit.add(`part:${part.id}`, 'part-standing', { standing: { is: 'dead', how: 'on-arrival' }, why: 'on-arrival' });
    else if (input.as !== 'wrong' && part.reservedFor === null)
      unit.add(`part:${part.id}`, 'part-reserved', { job: input.job });
  }
  if (input.as === 'ordered') unit.enter('fitting', 'part-came');
  else if (input.as === 'dearer') unit.enter('owners-word-needed', 'dearer');
  else unit.enter('part-on-the-way', `came-${input.as}`);
  return unit.accept();
}

function partProblem(job: Job, order: Order, part: Part | null, as: string): Refusal | null {
  if (!part)
    return as === 'ordered' || as === 'dearer'
      ? { refused: 'which-part-came', what: order.what, order: order.order }
      : null;
  const names = { part: part.id, tag: part.tag, name: part.name };
  if (part.belongs.to !== 'shop') return { refused: 'not-ours-to-order', ...names };
  if (part.reservedFor !== null && part.reservedFor !== job.id) return heldFor(part);
  if (part.standing.is === 'dead' && as !== 'dead' && as !== 'wrong')
    return { refused: 'came-dead', ...names, how: part.standing.how };
  const other = job.orders.find((one) => one.part === part.id && isLive(one));
  return other ? { refused: 'part-of-another-order', ...names, what: other.what } : null;
}

/** Dearer is what costs more than the owner agreed to, not what costs the shop more. */
function priceProblem(job: Job, order: Order, { as, priceMinor }: z.infer<typeof zReceived>): Refusal | null {
  const agreedMinor = lineOf(job, order)?.priceMinor ?? order.priceMinor;
  const cameMinor = priceMinor ?? order.priceMinor;
  const facts = { what: order.what, agreedMinor, priceMinor: cameMinor };
  if (as === 'ordered' && cameMinor > agreedMinor) return { refused: 'dearer-than-agreed', ...facts };
  return as === 'dearer' && cameMinor <= agreedMinor ? { refused: 'not-dearer', ...facts } : null;
}
