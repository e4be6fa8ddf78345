import { z } from 'zod';
import { planErasure } from '../../job/erasure.ts';
import { shopCommand } from '../kernel/command.ts';
import { accept, refuse } from '../kernel/decision.ts';
import { zOwnerId } from '../kernel/fields.ts';

/**
 * Decides what of an owner is destroyed and what stays, because they ask for it or its agreed time is over. The keys go
 * once the entry is written (`carryOutErasure.ts`).
 */
export const eraseOwner = shopCommand(
  'erase-owner',
  z.strictObject({ owner: zOwnerId, asked: z.boolean() }),
  ({ owner }) => ({ owner, ownersJobs: true }),
  ({ owner, ownersJobs = [], shop: { settings } }, { owner: id, asked }, { at }) => {
    if (!owner) return refuse('no-such-owner', { owner: id });
    if (!settings) return refuse('shop-not-set-up');
    const plan = planErasure(ownersJobs, settings, at);
    if (plan.open) return refuse('machine-is-here', { owner: id, jobs: plan.open });
    const { over, erased, kept } = plan;
    if (!asked && over !== null && at < over) return refuse('period-not-over', { owner: id, until: over });
    return accept({
      stream: `owner:${id}`,
      kind: 'owner-erased',
      body: { asked, erased: [...erased], kept: [...kept] },
    });
  },
);
