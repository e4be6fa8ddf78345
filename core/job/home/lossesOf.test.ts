import { expect, it } from 'vitest';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { PartId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { Job } from '../job.ts';
import { type Order, placed } from '../orders/order.ts';
import { lossesOf } from './lossesOf.ts';

const part = 'board' as PartId;
const incident = (more: object) =>
  ({ id: 'i', part, cause: 'unknown', photographs: [], costMinor: 900, at: epochMs(5), told: true, ...more }) as object;
const losses = (incidents: readonly object[], orders: readonly Order[] = []) =>
  lossesOf(aJobAt('ready', { incidents: incidents as Job['incidents'], orders }));

it('an incident counts when it happened, by how it came about, where that was said', () => {
  expect(losses([incident({})])).toEqual([{ at: 5, cause: 'unknown', part, minor: 900 }]);
  expect(losses([incident({ happenedAt: epochMs(2), how: 'dropped' })])).toEqual([
    { at: 2, cause: 'dropped', part, minor: 900 },
  ]);
});

it('a part is lost money where its supplier refused to take it back, and in no other case', () => {
  const order = (as: 'refunded' | 'replaced' | 'refused' | null): Order => ({
    ...placed({ order: 'o', what: 'board', supplier: 's', priceMinor: 8000, due: null, question: null }, epochMs(0)),
    part,
    settled: as && { as, minor: 6000, at: epochMs(7) },
  });
  expect(losses([], [order(null), order('refunded'), order('replaced'), order('refused')])).toEqual([
    { at: 7, cause: 'supplier-refused', part, minor: 6000 },
  ]);
});
