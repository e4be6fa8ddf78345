import { z } from 'zod';
import { personalShape } from '../journal/personal.ts';
import type { Shaped } from '../shape.ts';

/** One thing the owner says changed last. */
const changedShape = z.strictObject({
  id: z.string(),
  since: z.string().nullable(),
  what: personalShape(z.string()).nullable(),
});

/** What the owner told, in their own words and in terms that can be set beside what the bench sees. */
export const toldShape = z.strictObject({
  ownWords: personalShape(z.string()),
  symptoms: z.array(z.string()),
  changed: z.array(changedShape),
  often: z.array(z.string()),
  onlyWhen: z.array(z.string()),
  sinceDays: z.number().nullable(),
  lastWorked: z.string().nullable(),
});

/** A thing that came along or that is ours: what and how many. Not a part, not tagged. */
export const thingShape = z.strictObject({ thing: z.string(), count: z.number() });
export type Thing = Shaped<typeof thingShape>;

/** A thing of the owner's that came along, told apart from others by its id: what it is called is gone once they are erased. */
export const cameAlongShape = thingShape.extend({ id: z.string() });
export type CameAlong = Shaped<typeof cameAlongShape>;

/** What can be answered before the first screw. */
export const ENCRYPTION = ['yes', 'no', 'unknown'] as const;
export const BACKUP = ['yes', 'no', 'unknown', 'old'] as const;
export const MAKERS_WARRANTY = ['running', 'over', 'unknown'] as const;
export const SEALS = ['none', 'whole', 'broken', 'unknown'] as const;

/** What was asked in the second tier, before the first screw. */
export const beforeFirstScrewShape = z.strictObject({
  encryption: z.enum(ENCRYPTION),
  keyInHand: z.boolean(),
  keyPlace: personalShape(z.string()).nullable(),
  backup: z.enum(BACKUP),
  bought: z.string().nullable(),
  from: z.string().nullable(),
  makersWarranty: z.enum(MAKERS_WARRANTY),
  seals: z.enum(SEALS),
});
export type BeforeFirstScrew = Shaped<typeof beforeFirstScrewShape>;
