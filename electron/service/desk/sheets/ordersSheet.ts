import type { OrderRow } from '../../../../core/contract/screens.ts';
import { ordersDue } from '../../../../core/job/orders/ordersDue.ts';
import { zoneOf } from '../../../../core/job/shop.ts';
import type { EpochMs } from '../../../../core/time.ts';
import { jobsWithOrders, type Reader } from '../../../../db/index.ts';
import { loadView } from '../loadView.ts';

/** Every order that is not done with, over all jobs, what is overdue first. */
export async function ordersSheet(read: Reader, at: EpochMs): Promise<readonly OrderRow[]> {
  const rows: OrderRow[] = [];
  for (const id of await jobsWithOrders(read)) {
    const { job, machine, owner, parts, shop } = await loadView(read, { job: id }, at);
    if (!job) continue;
    const called = owner?.name.value ?? machine?.called ?? id;
    for (const due of ordersDue(job, parts, { at, zone: zoneOf(shop) })) rows.push({ ...due, job: id, called });
  }
  return rows.sort((a, b) => Number(b.overdue) - Number(a.overdue) || (a.by ?? Infinity) - (b.by ?? Infinity));
}
