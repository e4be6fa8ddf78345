import { z } from 'zod';
import type { Brand } from '../brand.ts';

/** An ISO 4217 alphabetic code. */
export type Currency = Brand<string, 'Currency'>;
export const currencyShape = z.string().transform((code) => code as Currency);
/** An amount in minor units of its currency (pence, cents, whole pesos), an integer. */
export type Money = { readonly minor: number; readonly currency: Currency };
