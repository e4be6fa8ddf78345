import { z } from 'zod';
import { type Brand, brand } from '../brand.ts';

/** An ISO 4217 alphabetic code. */
export type Currency = Brand<string, 'Currency'>;
const kept = brand<Currency>();
/** As it stands in entries: checked before it was written. */
export const currencyShape = z.string().transform(kept);
/** An amount in minor units of its currency (pence, cents, whole pesos), an integer. */
export type Money = { readonly minor: number; readonly currency: Currency };

/**
 * The most that one amount may be, in minor units: more is a mistyped figure. Far above any price of the trade and far
 * below what is counted exactly; chosen, no source.
 */
export const MOST_MINOR = 1_000_000_000_000;
