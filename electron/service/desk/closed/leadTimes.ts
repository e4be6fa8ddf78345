import { daysTaken, type OwnLead, ownLead } from '../../../../core/job/promise/leadTimes.ts';
import { USUAL_PROMISES } from '../../../../core/job/promise/turns.ts';
import type { ShopSettings } from '../../../../core/job/shop.ts';
import { endedJobs, type Reader } from '../../../../db/index.ts';
import { type ClosedJob, closedJobs } from './closedJobs.ts';

/** Days of the orders of closed jobs, as last looked at: they hold until another job closes. */
let kept: { readonly of: string; readonly days: readonly number[] } | null = null;

/** Lead times as the orders of these closed jobs leave them. */
export const leadOf = (settings: Pick<ShopSettings, 'promises'>, closed: readonly ClosedJob[]): OwnLead =>
  ownLead(
    (settings.promises ?? USUAL_PROMISES).leadDays,
    closed.flatMap(({ job }) => daysTaken(job.orders)),
  );

/** The shop's settings, with lead times moved by its own orders: what days are promised by. */
export async function byOwnLeads(read: Reader, settings: ShopSettings): Promise<ShopSettings> {
  const ids = await endedJobs(read);
  const last = ids.at(-1);
  const of = last === undefined ? '' : `${ids.join()} ${await read.version(`job:${last}`)}`;
  if (kept?.of !== of) kept = { of, days: (await closedJobs(read)).flatMap(({ job }) => daysTaken(job.orders)) };
  const promises = settings.promises ?? USUAL_PROMISES;
  return { ...settings, promises: { ...promises, leadDays: ownLead(promises.leadDays, kept.days).next } };
}
