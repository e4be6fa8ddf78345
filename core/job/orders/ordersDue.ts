import type { Part } from '../../custody/ledger.ts';
import type { PartId } from '../../ids.ts';
import type { EpochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { coreBy, type Order, orderState, returnBy } from './order.ts';

/** What is to be done about an order, by when, and whether that day has passed. */
export type OrderDue = {
  readonly order: string;
  readonly what: string;
  readonly supplier: string;
  readonly is: 'on-the-way' | 'needs-word' | 'to-go-back' | 'gone-back' | 'old-part-to-send';
  /** Expected, or back with the supplier, by this day; null: none was named. */
  readonly by: EpochMs | null;
  readonly overdue: boolean;
  /** What the supplier gives for the old part; null for the others. */
  readonly coreMinor: number | null;
};

/** The orders of a job that are not done with, and old parts that a supplier still gives something for. */
export function ordersDue(
  job: Job,
  parts: ReadonlyMap<PartId, Part>,
  { at, zone }: { readonly at: EpochMs; readonly zone: string },
): readonly OrderDue[] {
  return job.orders.flatMap((order) => {
    const { order: id, what, supplier } = order;
    const due = (is: OrderDue['is'], by: EpochMs | null, coreMinor: number | null = null): OrderDue => ({
      order: id,
      what,
      supplier,
      is,
      by,
      overdue: by !== null && by < at,
      coreMinor,
    });
    const state = orderState(order);
    if (state === 'on-the-way') return [due(state, order.due)];
    if (state === 'needs-word' || state === 'to-go-back') return [due(state, returnBy(order, zone))];
    if (state === 'gone-back') return [due(state, null)];
    return state === 'came' && order.core && !isWithSupplier(order, parts)
      ? [due('old-part-to-send', coreBy(order, zone), order.core.minor)]
      : [];
  });
}

const isWithSupplier = ({ core }: Order, parts: ReadonlyMap<PartId, Part>): boolean => {
  const at = core && parts.get(core.part)?.place.at;
  return at === 'transit' || at === 'away' || at === 'gone';
};
