import { describe, expect, it } from 'vitest';
import type { PartId, QuestionId } from '../../ids.ts';
import { DAY_MS, epochMs } from '../../time.ts';
import type { AgreedLine } from '../agreedLine.ts';
import { coreBy, isLive, lineOf, mayBeAgreed, type Order, orderState, placed, returnBy } from './order.ts';

const question = 'q1' as QuestionId;
const part = 'board' as PartId;
const order = (over: Partial<Order> = {}): Order => ({
  ...placed({ order: 'o', what: 'board', supplier: 's', priceMinor: 8000, due: null, question }, epochMs(0)),
  ...over,
});
const came = (over: Partial<Order> = {}) => order({ received: 'ordered', part, cameAt: epochMs(DAY_MS), ...over });
const line = (over: Partial<AgreedLine> = {}): AgreedLine => ({
  what: 'board',
  part: null,
  priceMinor: 8000,
  warrantyMonths: 24,
  question,
  ...over,
});
const settled = { as: 'refunded', minor: 1, at: epochMs(9) } as const;

describe('where an order stands', () => {
  it.each<[string, Order, boolean]>([
    ['on-the-way', order(), true],
    ['came', came(), true],
    ['came', came({ received: 'late' }), true],
    ['needs-word', came({ received: 'dearer' }), true],
    ['came', came({ received: 'dearer', agreedBy: 'q2' as QuestionId }), true],
    ['to-go-back', came({ received: 'wrong' }), false],
    ['to-go-back', came({ received: 'dead' }), false],
    ['owners-own', came({ received: 'owners-own' }), false],
    ['gone-back', came({ received: 'dead', sentBackAt: epochMs(3) }), false],
    ['settled', came({ received: 'dead', sentBackAt: epochMs(3), settled }), false],
    ['cancelled', order({ cancelled: 'sold out' }), false],
  ])('%s', (state, one, live) => {
    expect(orderState(one)).toBe(state);
    expect(isLive(one)).toBe(live);
  });
});

describe('the line that an order fills', () => {
  const filled = (one: Order, ...agreedLines: readonly AgreedLine[]) => lineOf({ agreedLines }, one) !== undefined;
  it('is of the same answer and of the same thing', () => {
    expect(filled(came(), line())).toBe(true);
    expect(filled(came(), line({ question: 'other' }))).toBe(false);
    expect(filled(came(), line({ what: 'fan' }))).toBe(false);
  });
  it('is found by its own words where the supplier calls it otherwise', () => {
    expect(filled(came({ what: 'AM-B46', line: 'board' }), line())).toBe(true);
    expect(filled(came({ what: 'board', line: 'fan' }), line())).toBe(false);
  });
  it('is of the new answer once what came was agreed to anew', () => {
    const again = came({ agreedBy: 'q2' as QuestionId });
    expect(filled(again, line())).toBe(false);
    expect(filled(again, line({ question: 'q2' }))).toBe(true);
  });
  it('is not one that was filled by another part', () => {
    expect(filled(came(), line({ part }))).toBe(true);
    expect(filled(came(), line({ part: 'other' as PartId }))).toBe(false);
  });
});

it('an order may be given a word once it came, until it is fitted', () => {
  const may = (one: Order, fitted?: boolean) =>
    mayBeAgreed({ agreedLines: [line({ ...(fitted !== undefined && { fitted }) })] }, one);
  expect([may(came()), may(came({ received: 'dearer' })), may(came(), false)]).toEqual([true, true, true]);
  expect([may(order()), may(came({ received: 'dead' })), may(came(), true)]).toEqual([false, false, false]);
});

it('days for sending back run from the day it came, and are none where none were agreed', () => {
  const core = { part, minor: 500, days: 30 };
  expect(returnBy(came({ returnDays: 14 }), 'UTC')).toBe(15 * DAY_MS);
  expect([
    returnBy(order({ returnDays: 14 }), 'UTC'),
    returnBy(came(), 'UTC'),
    returnBy(came({ returnDays: null }), 'UTC'),
  ]).toEqual([null, null, null]);
  expect([coreBy(came({ core }), 'UTC'), coreBy(order({ core }), 'UTC'), coreBy(came(), 'UTC')]).toEqual([
    31 * DAY_MS,
    null,
    null,
  ]);
});
