import type { Minutes } from '../time.ts';
import { money } from './arithmetic.ts';
import type { Money } from './money.ts';
import { type Rounding, roundFraction, toSafe } from './rounding.ts';

/** What hands-on time costs. */
export type LabourRate = { readonly price: Money; readonly per: 'minute' | 'hour' };

const MS: Readonly<Record<LabourRate['per'], bigint>> = { minute: 60_000n, hour: 3_600_000n };

/**
 * The price of minutes of work, to a whole minor unit. Minutes are taken to the millisecond, as timers give them.
 * @throws {RangeError} for minutes below zero or not finite: refused at the door, so a defect here.
 */
export function priceOfMinutes(minutes: Minutes, rate: LabourRate, rounding: Rounding = 'half-up'): Money {
  if (!Number.isFinite(minutes) || minutes < 0) throw new RangeError(`${minutes} minutes have no price`);
  const worked = BigInt(Math.round(minutes * 60_000));
  return money(toSafe(roundFraction(BigInt(rate.price.minor) * worked, MS[rate.per], rounding)), rate.price.currency);
}
