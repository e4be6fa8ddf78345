import type { OwnerErased } from '../approval/owner.ts';
import { dayOf, daysAfter, fromWall, yearOf } from '../calendar.ts';
import type { JobId } from '../ids.ts';
import { PURPOSES, type Purpose } from '../journal/personal.ts';
import type { EpochMs } from '../time.ts';
import type { Job } from './job.ts';
import type { ShopSettings } from './shop.ts';

/**
 * How long a bill is kept where the shop says nothing: ten whole years after its year. The longest time that is usual
 * for bills; from memory, no source. The shop puts in what its own law says.
 */
export const USUAL_BILL_YEARS = 10;

/** What is held of an owner; `staff` is the shop's own. */
const OF_OWNERS: readonly Purpose[] = PURPOSES.filter((purpose) => purpose !== 'staff');

/** What an erasure would come to, or which jobs are in its way. `over`: when the agreed time for the last job ends. */
export type ErasurePlan =
  | { readonly open: readonly JobId[] }
  | {
      readonly open: null;
      readonly over: EpochMs | null;
      readonly erased: readonly Purpose[];
      readonly kept: OwnerErased['kept'];
    };

/**
 * What of an owner goes now and what stays. Bills stand in the record, which law has kept for whole years after the year
 * of the last one; everything else goes. Nothing goes while a job of theirs is open.
 */
export function planErasure(jobs: readonly Job[], settings: ShopSettings, at: EpochMs): ErasurePlan {
  const open = jobs.filter(({ stage }) => stage !== 'gone-home').map(({ id }) => id);
  if (open.length > 0) return { open };
  const ends = jobs.flatMap(({ handover }) => (handover ? [handover.at] : []));
  const until = billsUntil(jobs, settings);
  const keeps = until !== null && until > at;
  return {
    open: null,
    over: ends.length === 0 ? null : agreedUntil(ends, settings),
    erased: OF_OWNERS.filter((purpose) => !(keeps && purpose === 'record')),
    kept: keeps ? [{ purpose: 'record', why: 'bills', until }] : [],
  };
}

/** The end of the day so many days after the last of these moments. */
function agreedUntil(ends: readonly EpochMs[], { zone, rules }: ShopSettings): EpochMs {
  const last = Math.max(...ends);
  return fromWall(`${daysAfter(dayOf(last, zone), rules.keptDays + 1)}T00:00`, zone);
}

/** Until when law has the bills of these jobs kept; null where none was made and nothing was paid. */
function billsUntil(jobs: readonly Job[], { zone, rules }: ShopSettings): EpochMs | null {
  const years = jobs.flatMap(({ papers, paid, handover }) => [
    ...paid.map((payment) => yearOf(payment.at, zone)),
    ...(handover && papers.some(({ kind }) => kind === 'bill') ? [yearOf(handover.at, zone)] : []),
  ]);
  if (years.length === 0) return null;
  const first = Math.max(...years) + 1 + (rules.billYears ?? USUAL_BILL_YEARS);
  return fromWall(`${String(first).padStart(4, '0')}-01-01T00:00`, zone);
}
