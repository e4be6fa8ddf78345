import { z } from 'zod';
import { partIdShape, questionIdShape } from '../../ids.ts';
import type { EntryOf } from '../../journal/entry.ts';
import type { BodiesOf } from '../../shape.ts';
import { epochMsShape } from '../../time.ts';
import { CAME_AS, orderPlacedShape, RETURNED_AS } from './order.ts';

export const ORDER_BODIES = {
  'part-ordered': orderPlacedShape,
  'part-received': z.strictObject({
    order: z.string(),
    as: z.enum(CAME_AS),
    part: partIdShape.nullable(),
    /** What it costs the owner as it came; not written where that is what was ordered. */
    priceMinor: z.number().optional(),
  }),
  'order-due-changed': z.strictObject({ order: z.string(), due: epochMsShape.nullable(), says: z.string() }),
  /** Called off; `drops`: no other will be ordered, and the owner does not pay for it. */
  'order-cancelled': z.strictObject({ order: z.string(), why: z.string(), drops: z.boolean() }),
  /** The owner agreed to what came, at this price, in place of what was agreed before. */
  'order-agreed': z.strictObject({
    order: z.string(),
    question: questionIdShape,
    priceMinor: z.number(),
    warrantyMonths: z.number(),
  }),
  /** Which part it is that was sold: known once it came and is fitted. */
  'sold-part-named': z.strictObject({ question: z.string(), what: z.string(), part: partIdShape }),
  'order-sent-back': z.strictObject({ order: z.string(), says: z.string().nullable(), drops: z.boolean() }),
  'return-settled': z.strictObject({ order: z.string(), as: z.enum(RETURNED_AS), minor: z.number() }),
} as const;
export type OrderBodies = BodiesOf<typeof ORDER_BODIES>;

export type OrderEntry = EntryOf<`job:${string}`, OrderBodies>;
