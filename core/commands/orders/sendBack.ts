import { z } from 'zod';
import { orderState, RETURNED_AS, returnBy } from '../../job/orders/order.ts';
import { zoneOf } from '../../job/shop.ts';
import { STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zId, zJobId, zLine, zMinor } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/**
 * Sends what came back to its supplier: the wrong one, the dead one, one the owner does not want at that price. After
 * the supplier's days it goes only with what the supplier said to it. Without another one its line goes too.
 */
export const sendBack = jobCommand(
  'send-back',
  z.strictObject({
    job: zJobId,
    order: zId,
    carrier: zLine,
    number: zLine,
    insured: z.boolean(),
    /** What the supplier said, where their days are over. */
    says: zLine.nullable(),
    another: z.boolean(),
  }),
  STAGES,
  (view, input, asking) => {
    const order = view.job.orders.find((one) => one.order === input.order);
    if (!order || !['came', 'needs-word', 'to-go-back'].includes(orderState(order)))
      return refuse('nothing-to-send-back', { order: input.order });
    const until = returnBy(order, zoneOf(view.shop));
    if (until !== null && asking.at > until && input.says === null)
      return refuse('supplier-days-over', { what: order.what, supplier: order.supplier, until });
    const unit = openUnitOfWork(view, asking);
    const part = order.part === null ? undefined : view.parts.get(order.part);
    if (part?.belongs.to === 'owner') return refuse('sold-already', { part: part.id, name: part.name });
    if (part?.place.at === 'slot')
      return refuse('take-it-out-first', { part: part.id, name: part.name, slot: part.place.slot });
    if (part) {
      const { carrier, number, insured } = input;
      const refusal = unit.move({
        part: part.id,
        from: part.place,
        to: { at: 'transit', carrier, number, insured, to: order.supplier },
        job: input.job,
        why: { by: 'order', order: order.order },
      });
      if (refusal) return { ok: false, refusal };
      if (part.reservedFor === input.job) unit.add(`part:${part.id}`, 'part-released', { job: input.job });
    }
    unit.add(`job:${input.job}`, 'order-sent-back', { order: order.order, says: input.says, drops: !input.another });
    return unit.accept();
  },
);

/** What the supplier made of it: money back, another one, or neither, which is then the shop's loss. */
export const settleReturn = jobCommand(
  'settle-return',
  z.strictObject({ job: zJobId, order: zId, as: z.enum(RETURNED_AS), minor: zMinor }),
  STAGES,
  (view, { job, order: id, as, minor }, asking) => {
    const order = view.job.orders.find((one) => one.order === id);
    if (!order || orderState(order) !== 'gone-back') return refuse('nothing-sent-back', { order: id });
    const unit = openUnitOfWork(view, asking);
    const part = order.part === null ? undefined : view.parts.get(order.part);
    if (part && as !== 'refused') {
      const refusal = unit.move({
        part: part.id,
        from: part.place,
        to: { at: 'gone', why: 'returned' },
        job,
        why: { by: 'order', order: id },
      });
      if (refusal) return { ok: false, refusal };
    }
    unit.add(`job:${job}`, 'return-settled', { order: id, as, minor });
    return unit.accept();
  },
);
