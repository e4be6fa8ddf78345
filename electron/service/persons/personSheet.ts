import { afterDays } from '../../../core/calendar.ts';
import type { PersonSheet } from '../../../core/contract/personsSheet.ts';
import type { OwnerId } from '../../../core/ids.ts';
import { planErasure } from '../../../core/job/erasure.ts';
import type { EpochMs } from '../../../core/time.ts';
import { type OpenShop, ownersGoneBefore, type Reader } from '../../../db/index.ts';
import { loadView } from '../desk/loadView.ts';

type Held = Pick<OpenShop, 'held'>;

/** What is held of an owner, and what would become of it now; null where there is no such owner. */
export async function personSheet(read: Reader, shop: Held, owner: OwnerId, at: EpochMs): Promise<PersonSheet | null> {
  const view = await loadView(read, { owner, ownersJobs: true }, at);
  const jobs = view.ownersJobs ?? [];
  if (!view.owner || !view.shop.settings) return null;
  const plan = planErasure(jobs, view.shop.settings, at);
  const held = new Set(shop.held(owner));
  const known = { owner, name: view.owner.name.value, jobs: jobs.length };
  if (plan.open) return { ...known, open: plan.open, goes: [], stays: [], over: null };
  return {
    ...known,
    open: [],
    goes: plan.erased.filter((purpose) => held.has(purpose)),
    stays: plan.kept.filter(({ purpose }) => held.has(purpose)),
    over: plan.over,
  };
}

/** Owners of whom something goes by itself within so many days, the longest over first. */
export async function personsDue(read: Reader, shop: Held, at: EpochMs, days: number): Promise<readonly PersonSheet[]> {
  const { settings } = await read.load('shop');
  if (!settings) return [];
  const { zone, rules } = settings;
  const by = afterDays(at, days, zone);
  const due: PersonSheet[] = [];
  for (const owner of await ownersGoneBefore(read, afterDays(by, -rules.keptDays, zone))) {
    // What was erased already holds nothing: it is not looked into again every day.
    if (shop.held(owner).length === 0) continue;
    const sheet = await personSheet(read, shop, owner, at);
    if (sheet && sheet.over !== null && sheet.over <= by && sheet.goes.length > 0) due.push(sheet);
  }
  return due;
}
