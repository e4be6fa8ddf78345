import { z } from 'zod';
import { issueTag } from '../../custody/tag.ts';
import { partId } from '../../ids.ts';
import { OWNERS_OWN, orderState } from '../../job/orders/order.ts';
import { jobCommand } from '../kernel/command.ts';
import { refuse } from '../kernel/decision.ts';
import { zAttributes, zId, zJobId, zKind, zLine } from '../kernel/fields.ts';
import { openUnitOfWork } from '../kernel/unitOfWork.ts';
import { issuePaper } from '../papers/issue.ts';

/**
 * The owner brings a part of their own: it is theirs, gets its tag, and is proved like any other before it is fitted.
 * An order that it takes the place of is off, and the owner does not pay for that one.
 */
export const bringOwnPart = jobCommand(
  'bring-own-part',
  z.strictObject({
    job: zJobId,
    order: zId.nullable(),
    kind: zKind,
    name: zLine,
    attributes: zAttributes,
    tray: zLine,
  }),
  ['tracing', 'owners-word-needed', 'part-on-the-way', 'fitting'],
  (view, input, asking) => {
    const order = view.job.orders.find((one) => one.order === input.order);
    if (input.order !== null && (!order || orderState(order) !== 'on-the-way'))
      return refuse('no-such-order', { order: input.order });
    const unit = openUnitOfWork(view, asking);
    const id = partId(asking.newId());
    unit.add(`part:${id}`, 'part-known', {
      id,
      tag: issueTag(asking.randomInt),
      kind: input.kind,
      name: input.name,
      belongs: { to: 'owner', owner: view.job.owner },
      attributes: input.attributes,
      standing: { is: 'unproved', why: OWNERS_OWN },
      place: { at: 'tray', tray: input.tray, job: input.job },
      serial: null,
      source: 'by-hand',
      dataBearing: input.kind === 'drive',
      at: asking.at,
      by: asking.by,
    });
    unit.add(`job:${input.job}`, 'part-joined', { part: id });
    if (order) unit.add(`job:${input.job}`, 'part-received', { order: order.order, as: 'owners-own', part: id });
    if (view.job.stage === 'part-on-the-way') unit.enter('fitting', 'owners-own');
    issuePaper(unit, 'part-tag', asking, id);
    return unit.accept();
  },
  () => ({ papers: ['part-tag'] }),
);
