import { z } from 'zod';
import type { ShopSettings, Staff } from '../../job/shop.ts';
import { currencyOf } from '../../money/currencyOf.ts';
import { ROUNDINGS } from '../../money/rounding.ts';
import { ROLL_MM } from '../../papers/tags/stock.ts';
import { ROLES } from '../../people/roles.ts';
import { zId, zLine, zMinor, zPermille, zStaffId, zText } from '../kernel/fields.ts';

const zTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/);

const zDays = z.number().min(0.05).max(365);

/** What tags are printed on. */
export const zTagStock = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('roll'), widthMm: z.number().min(ROLL_MM.least).max(ROLL_MM.most) }),
  z.strictObject({ on: z.enum(['A4', 'Letter']) }),
]);

const zHours = z
  .array(z.strictObject({ weekday: z.int().min(0).max(6), from: zTime, to: zTime }))
  .max(28)
  .readonly();

const zPromises = z.strictObject({
  // Below one in two a promise is more often broken than kept.
  percentile: z.number().min(0.5).max(0.99),
  closed: z.array(z.iso.date()).max(400).readonly(),
  leadDays: z
    .strictObject({ low: zDays, likely: zDays, high: zDays })
    .refine(({ low, likely, high }) => low <= likely && likely <= high, { error: 'not from low to high' }),
  dayMinutes: z.number().min(0).max(1440).exactOptional(),
});

export const zSettings = z.strictObject({
  name: zLine,
  address: zText,
  phone: zLine,
  locale: z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/),
  language: z.string().regex(/^[a-z]{2}$/),
  zone: zLine,
  currency: z.string().transform((code, context) => {
    const currency = currencyOf(code);
    if (currency === code) return currency;
    context.addIssue({ code: 'custom', message: 'no active currency of ISO 4217 with amounts' });
    return z.NEVER;
  }),
  paperSize: z.enum(['A4', 'Letter']),
  tax: z.strictObject({
    permille: zPermille,
    inside: z.boolean(),
    others: z.array(zPermille).max(10).readonly().optional(),
    round: z.enum(['per-line', 'per-total']).optional(),
    rounding: z.enum(ROUNDINGS).optional(),
  }),
  perMinuteMinor: z.number().min(0).max(1_000_000),
  findingFee: z.strictObject({ minor: zMinor, credited: z.boolean(), coversMinutes: z.int().min(0).max(10_000) }),
  warrantyMonths: z.strictObject({ work: z.int().min(0).max(240), part: z.int().min(0).max(240) }),
  open: zHours,
  benches: z.array(zLine).min(1).max(40).readonly(),
  rigs: z.array(zId).max(20).readonly(),
  rules: z.strictObject({
    triesBeforeHome: z.int().min(1).max(20),
    questionValidHours: z.int().min(1).max(2000),
    keptDays: z.int().min(1).max(3650),
    storageFeeMinorPerDay: zMinor,
    storageFeeAfterDays: z.int().min(0).max(3650),
    standingLapsesDays: z.int().min(1).max(3650),
    processorLimitC: z.int().min(40).max(110),
    billYears: z.int().min(0).max(50).exactOptional(),
  }),
  notCollectedText: z.string().max(8000),
  promises: zPromises.exactOptional(),
  tagsOn: zTagStock.exactOptional(),
  scanSign: z
    .string()
    .regex(/^[!-/:-@[-`{-~]$/)
    .exactOptional(),
  lockAfterMinutes: z.int().min(1).max(240).exactOptional(),
}) satisfies z.ZodType<ShopSettings>;

export const zStaff = z
  .array(
    z.strictObject({
      id: zStaffId,
      name: zLine,
      roles: z.array(z.enum(ROLES)).min(1).readonly(),
      hours: zHours.exactOptional(),
    }),
  )
  .min(1)
  .max(60)
  .readonly() satisfies z.ZodType<readonly Staff[]>;
