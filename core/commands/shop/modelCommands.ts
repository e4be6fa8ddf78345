import { z } from 'zod';
import type { Shop } from '../../job/shop.ts';
import { canonicalJson } from '../../journal/canonicalJson.ts';
import { GROUPS } from '../../tracing/live/groups.ts';
import type { PriorTally } from '../../tracing/live/shop/closedTracing.ts';
import { shopCommand } from '../kernel/command.ts';
import type { Decision } from '../kernel/decision.ts';
import { accept, refuse } from '../kernel/decision.ts';
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

/** Goes back to the edition before; from the first one to the model as delivered. */
export const goBackToModel = shopCommand(
  'go-back-to-model',
  z.strictObject({}),
  () => ({}),
  (view) => {
    const now = editionInUse(view.shop);
    return now
      ? accept({ stream: 'shop', kind: 'model-gone-back', body: { from: now.name } })
      : refuse('model-is-as-delivered');
  },
);

const zCount = z.int().min(0).max(10_000_000);
const zTally = z.strictObject({
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

/** Takes over what the shop's own closed jobs say of how often each fault is met. Earlier learning is replaced, not added to. */
export const takeOverPriors = shopCommand(
  'take-over-priors',
  z.strictObject({ tally: zTally }),
  () => ({}),
  (_view, { tally }) =>
    tally.counted === 0
      ? refuse('nothing-to-learn-from', { ...tally.excluded })
      : accept({ stream: 'shop', kind: 'priors-learnt', body: tally }),
);

/** Puts the priors back to what is stated in the model. */
export const resetPriors = shopCommand(
  'reset-priors',
  z.strictObject({}),
  () => ({}),
  (view) =>
    view.shop.learnt
      ? accept({ stream: 'shop', kind: 'priors-reset', body: { counted: view.shop.learnt.counted } })
      : refuse('priors-are-as-stated'),
);
