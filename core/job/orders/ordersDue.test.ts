import { expect, it } from 'vitest';
import { aPart, TRAY } from '../../../tests/builders/custody.ts';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { Place } from '../../custody/place.ts';
import type { PartId } from '../../ids.ts';
import { DAY_MS, epochMs } from '../../time.ts';
import { type Order, placed } from './order.ts';
import { ordersDue } from './ordersDue.ts';

const old = 'old board' as PartId;
const order = (over: Partial<Order> = {}): Order => ({
  ...placed(
    { order: 'o', what: 'board', supplier: 's', priceMinor: 8000, due: epochMs(DAY_MS), question: null, returnDays: 2 },
    epochMs(0),
  ),
  ...over,
});
const due = (one: Order, at = 0, place: Place = TRAY) =>
  ordersDue(aJobAt('fitting', { orders: [one] }), new Map([[old, aPart({ id: old, place })]]), {
    at: epochMs(at),
    zone: 'UTC',
  });

it('an order on its way is overdue after its day, not on it; without a day never', () => {
  expect(due(order(), DAY_MS)).toMatchObject([{ is: 'on-the-way', by: DAY_MS, overdue: false }]);
  expect(due(order(), DAY_MS + 1)).toMatchObject([{ overdue: true }]);
  expect(due(order({ due: null }), 99 * DAY_MS)).toMatchObject([{ by: null, overdue: false }]);
});

it('what needs a word or goes back has the supplier’s own days, and what went back none', () => {
  const came = { part: 'new' as PartId, cameAt: epochMs(DAY_MS) };
  expect(due(order({ ...came, received: 'dearer' }))).toMatchObject([{ is: 'needs-word', by: 3 * DAY_MS }]);
  expect(due(order({ ...came, received: 'dead' }))).toMatchObject([{ is: 'to-go-back', by: 3 * DAY_MS }]);
  expect(due(order({ ...came, received: 'dead', sentBackAt: epochMs(2) }))).toMatchObject([
    { is: 'gone-back', by: null },
  ]);
  expect(due(order({ ...came, received: 'ordered' }))).toEqual([]);
  expect(due(order({ cancelled: 'sold out' }))).toEqual([]);
});

it('an old part that the supplier gives something for is to be sent until it is on its way to them', () => {
  const sold = order({
    part: 'new' as PartId,
    cameAt: epochMs(0),
    received: 'ordered',
    core: { part: old, minor: 1500, days: 30 },
  });
  expect(due(sold)).toMatchObject([{ is: 'old-part-to-send', by: 30 * DAY_MS, coreMinor: 1500 }]);
  const sent: readonly Place[] = [
    { at: 'transit', carrier: 'post', number: '1', insured: true, to: 's' },
    { at: 'away', kind: 'supplier', name: 's' },
    { at: 'gone', why: 'returned' },
  ];
  for (const place of sent) expect(due(sold, 0, place)).toEqual([]);
});
