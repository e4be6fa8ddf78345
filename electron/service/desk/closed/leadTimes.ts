import { daysTaken, leadDaysOf, type OwnLead, ownLead } from '../../../../core/job/promise/leadTimes.ts';
import { USUAL_PROMISES } from '../../../../core/job/promise/turns.ts';
import type { ShopSettings } from '../../../../core/job/shop.ts';
import { ordersTook, type Reader } from '../../../../db/index.ts';
import { type ClosedJob, NEWEST } from './closedJobs.ts';

/** Lead times as the orders of these closed jobs leave them. */
export const leadOf = (settings: Pick<ShopSettings, 'promises'>, closed: readonly ClosedJob[]): OwnLead =>
  ownLead(
    (settings.promises ?? USUAL_PROMISES).leadDays,
    closed.flatMap(({ job }) => daysTaken(job.orders)),
  );

/** The shop's settings, with lead times moved by its own orders: what days are promised by. */
export async function byOwnLeads(read: Reader, settings: ShopSettings): Promise<ShopSettings> {
  const promises = settings.promises ?? USUAL_PROMISES;
  const days = (await ordersTook(read, NEWEST)).map(leadDaysOf);
  return { ...settings, promises: { ...promises, leadDays: ownLead(promises.leadDays, days).next } };
}
