import { z } from 'zod';
import type { Shaped } from '../shape.ts';
import { ROUNDINGS } from './rounding.ts';
import { type TaxMethod, type TaxRate, taxRate } from './tax.ts';

/**
 * How a shop's prices stand to tax. Rates are in thousandths: 200 is 20 %, 99.75 is 9.975 %. `permille` is the usual
 * one; `others` are further rates that an item can carry. Rounded half up on each line unless the shop says otherwise.
 */
export const taxTermsShape = z.strictObject({
  permille: z.number(),
  /** Prices contain the tax; else it comes on top. */
  inside: z.boolean(),
  others: z.array(z.number()).optional(),
  round: z.enum(['per-line', 'per-total']).optional(),
  rounding: z.enum(ROUNDINGS).optional(),
});
export type TaxTerms = Shaped<typeof taxTermsShape>;

/** @throws {RangeError} for a rate finer than a thousandth of a percent: refused at the door. */
export const taxRateOf = (permille: number): TaxRate => taxRate(permille / 10);

/**
 * How tax is taken by these terms: in the prices or on top, rounded per line and half up unless they say otherwise.
 */
export const taxMethodOf = ({ inside, round, rounding }: TaxTerms): TaxMethod => ({
  prices: inside ? 'tax-contained' : 'tax-on-top',
  round: round ?? 'per-line',
  rounding: rounding ?? 'half-up',
});
