import { z } from 'zod';
import type { Shop } from '../../job/shop.ts';
import { canonicalJson } from '../../journal/canonicalJson.ts';
import { GROUPS } from '../../tracing/live/groups.ts';
import type { PriorTally } from '../../tracing/live/shop/closedTracing.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, type Decision, refuse } from '../kernel/decision.ts';
import { zId, zLine } from '../kernel/fields.ts';

const zDifference = z.strictObject({
  file: zId,
  path: z.string().max(300),
  before: z.json().optional(),
  after: z.json().optional(),
});

/** The edition a shop works with; null: the model as delivered. */
export const editionInUse = (shop: Shop) => shop.models.at(-1) ?? null;

/** Takes the shop's own edition of the fault model into use: the changes to the one delivered, proven to hold together. */
export const useModel = shopCommand(
  'use-model',
  z.strictObject({ name: zLine, changes: z.array(zDifference).min(1).max(5000) }),
  () => ({}),
  (view, { name, changes }, asking): Decision => {
    const refused = asking.tracing.refusesModel(changes);
    if (refused) return { ok: false, refusal: refused };
    const now = editionInUse(view.shop);
    if (now && canonicalJson(now.changes) === canonicalJson(changes))
      return refuse('model-in-use-already', { name: now.name });
    return accept({ stream: 'shop', kind: 'model-used', body: { name, changes } });
  },
);

const zCount = z.int().min(0).max(10_000_000);

export const zTally = z.strictObject({
  counted: zCount,
  excluded: z.strictObject({
    named: zCount,
    handedOver: zCount,
    notReproduced: zCount,
    cameBack: zCount,
    unknown: zCount,
  }),
  counts: z
    .array(z.strictObject({ group: z.enum(GROUPS), fault: zId, jobs: z.number().positive().max(10_000_000) }))
    .max(10_000),
}) satisfies z.ZodType<PriorTally>;
