import type { Part } from '../../custody/ledger.ts';
import type { Refusal } from '../../refusal.ts';
import type { Job } from '../job.ts';
import { lineOf, OWNERS_OWN, orderState } from './order.ts';

/**
 * Why a part that was ordered, or that the owner brought, is not fitted yet; null when it may be, and for every other
 * part. It is proved first, it is not one that goes back, and it is within the owner's word as it came.
 */
export function whyNotFitted(job: Job, part: Part): Refusal | null {
  const names = { part: part.id, tag: part.tag, name: part.name };
  if (part.standing.is === 'unproved' && part.standing.why === OWNERS_OWN)
    return { refused: 'prove-before-fitting', ...names };
  const order = job.orders.findLast((one) => one.part === part.id);
  if (!order || part.belongs.to === 'owner') return null;
  const facts = { ...names, what: order.what, supplier: order.supplier, order: order.order };
  const state = orderState(order);
  if (state === 'needs-word')
    return {
      refused: 'dearer-needs-word',
      ...facts,
      agreedMinor: lineOf(job, order)?.priceMinor ?? order.priceMinor,
      priceMinor: order.cameMinor,
    };
  if (state !== 'came') return { refused: 'order-goes-back', ...facts, as: order.received };
  if (part.standing.is !== 'known-good') return { refused: 'prove-before-fitting', ...facts };
  return lineOf(job, order) ? null : { refused: 'order-has-no-word', ...facts, priceMinor: order.cameMinor };
}
