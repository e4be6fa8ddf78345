import { z } from 'zod';
import { orderState } from '../../job/orders/order.ts';
import { OPEN_STAGES } from '../../stage.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zEpoch, zId, zJobId, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';

/**
 * The supplier names another day, or none. Where that day lies after the one the owner was promised, the promise is
 * given anew with it: a part that is late never leaves an old promise standing.
 */
export const orderLate = jobCommand(
  'order-late',
  z.strictObject({
    job: zJobId,
    order: zId,
    due: zEpoch.nullable(),
    says: zLine,
    promise: z.strictObject({ at: zEpoch, p90: zEpoch, told: z.boolean() }).nullable(),
  }),
  OPEN_STAGES,
  (view, { job, order: id, due, says, promise }, asking) => {
    const order = view.job.orders.find((one) => one.order === id);
    if (!order || orderState(order) !== 'on-the-way') return refuse('no-such-order', { order: id });
    if (due !== null && due <= asking.at) return refuse('due-day-past', { what: order.what, due });
    const promised = view.job.promised?.at ?? null;
    if (promise === null && promised !== null && (due === null || due > promised))
      return refuse('new-promise-needed', { what: order.what, promised, due });
    if (promise !== null && promise.at < (due ?? asking.at))
      return refuse('promise-before-part', { what: order.what, promised: promise.at, due });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${job}`, 'order-due-changed', { order: id, due, says });
    if (promise !== null) unit.add(`job:${job}`, 'promised', promise);
    return unit.accept();
  },
);

/** Calls an order off. Without another one the owner does not pay for it: its line goes. */
export const cancelOrder = jobCommand(
  'cancel-order',
  z.strictObject({ job: zJobId, order: zId, why: zLine, another: z.boolean() }),
  OPEN_STAGES,
  (view, { job, order: id, why, another }, asking) => {
    const order = view.job.orders.find((one) => one.order === id);
    if (!order || orderState(order) !== 'on-the-way') return refuse('no-such-order', { order: id });
    const unit = openUnitOfWork(view, asking);
    unit.add(`job:${job}`, 'order-cancelled', { order: id, why, drops: !another });
    return unit.accept();
  },
);
