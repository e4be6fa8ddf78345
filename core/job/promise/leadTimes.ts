import { logNormalOf } from '../../figures/logNormal.ts';
import type { Stated } from '../../labour/tasks/catalogue.ts';
import { type MovedTime, movedTime } from '../../labour/tasks/learnTimes.ts';
import { type Believed, nextOne, updated } from '../../labour/tasks/normalInverseGamma.ts';
import { minutesAt, statedBelief } from '../../labour/tasks/taskTime.ts';
import { DAY_MS } from '../../time.ts';
import type { Order } from '../orders/order.ts';
import type { PromiseRules } from '../shop.ts';

/** A part that was there the same hour took this many days: nothing has no logarithm. */
const SHORTEST_DAYS = 0.05;

type LeadDays = PromiseRules['leadDays'];

/** What parts take from ordering to having: as stated, moved by the shop's own orders. */
export type OwnLead = MovedTime & {
  readonly stated: Stated;
  /** Of the next order: 5th percentile, median, 95th percentile. */
  readonly next: LeadDays;
  /** Own orders it rests on. */
  readonly orders: number;
};

/** Days that orders which came have taken. One that is still on the way is no case yet; the owner's own part never is. */
export const daysTaken = (orders: readonly Pick<Order, 'placedAt' | 'cameAt' | 'received'>[]): readonly number[] =>
  orders.flatMap(({ placedAt, cameAt, received }) =>
    cameAt === null || received === null || received === 'owners-own' ? [] : [leadDaysOf(cameAt - placedAt)],
  );

/** So many milliseconds as days that an order took. */
export const leadDaysOf = (ms: number): number => Math.max(SHORTEST_DAYS, ms / DAY_MS);

/**
 * Lead times by the conjugate rule on the logarithm of days, as task times are learnt: what is stated counts as much as
 * six own orders, so that a few move it little.
 */
export function ownLead(stated: LeadDays, days: readonly number[]): OwnLead {
  const believed: Believed = updated(
    statedBelief(stated),
    days.map((one) => Math.log(one)),
  );
  const time = nextOne(believed);
  const asStated: Stated = { ...stated, skewed: logNormalOf(stated).skewed };
  return {
    ...movedTime({ stated: asStated, believed }),
    stated: asStated,
    next:
      days.length === 0
        ? stated
        : { low: minutesAt(time, 0.05), likely: minutesAt(time, 0.5), high: minutesAt(time, 0.95) },
    orders: days.length,
  };
}
