import { z } from 'zod';
import type { Shaped } from '../shape.ts';

const PAGE_SIZES = ['A4', 'Letter'] as const;
export type PageSize = (typeof PAGE_SIZES)[number];

export type LabelSize = { readonly widthMm: number; readonly heightMm: number };

/** What tags are printed on: a roll as wide as the printer takes, or sheets to be cut. */
export const tagStockShape = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('roll'), widthMm: z.number() }),
  z.strictObject({ on: z.enum(PAGE_SIZES) }),
]);
export type TagStock = Shaped<typeof tagStockShape>;
