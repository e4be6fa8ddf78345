import { z } from 'zod';
import usual from '../../../../assets/cases/usual.json' with { type: 'json' };
import { EQUIPMENT_KINDS, PART_KINDS } from '../../../custody/part.ts';

const zUsual = z.object({
  machine: z.object({
    graphicsInProcessor: z.boolean(),
    card: z.boolean(),
    dimms: z.number(),
    slots: z.number(),
    drives: z.number(),
    riser: z.boolean(),
    addIns: z.boolean(),
    modularSupply: z.boolean(),
    firmwareRescue: z.boolean().nullable(),
    encrypted: z.enum(['yes', 'no', 'unknown']),
    keyInHand: z.boolean(),
  }),
  agreed: z.array(z.string()),
  money: z.object({ limit: z.number(), perMinute: z.number() }),
  dayMinutes: z.number(),
  proveMinutes: z.number(),
  wall: z.array(
    z.object({
      id: z.string(),
      kind: z.enum([...PART_KINDS, ...EQUIPMENT_KINDS]),
      standing: z.enum(['trial-grade', 'known-good']),
    }),
  ),
});

/** What a bench case means where it says nothing. */
export const USUAL = zUsual.parse(usual);
