import { describe, expect, it } from 'vitest';
import { aPart, BIN, ours } from '../../../tests/builders/custody.ts';
import { aJobAt } from '../../../tests/builders/jobAt.ts';
import type { Part } from '../../custody/ledger.ts';
import type { PartId, QuestionId } from '../../ids.ts';
import { epochMs } from '../../time.ts';
import type { AgreedLine } from '../agreedLine.ts';
import { type CameAs, type Order, OWNERS_OWN, placed } from './order.ts';
import { whyNotFitted } from './whyNotFitted.ts';

const question = 'q1' as QuestionId;
const line: AgreedLine = { what: 'board', part: null, priceMinor: 8000, warrantyMonths: 24, question };
const KNOWN_GOOD: Part['standing'] = {
  is: 'known-good',
  evidence: { at: epochMs(0), by: 'kim', where: 'second rig', scopes: ['starts'] },
  lapses: null,
};
/** The board that came for the order, proved on the rig, until it is said otherwise. */
const board = (says: Partial<Part> = {}): Part =>
  ours({ id: 'board' as PartId, kind: 'board', name: 'new board', standing: KNOWN_GOOD, place: BIN, ...says });
const came = (received: CameAs | null, over: Partial<Order> = {}): Order => ({
  ...placed(
    { order: 'o1', what: 'board', supplier: 'Fennimore', priceMinor: 8000, due: null, question, returnDays: 14 },
    epochMs(0),
  ),
  received,
  part: 'board' as PartId,
  cameAt: epochMs(1),
  ...over,
});
const why = (order: Order | null, part = board(), agreedLines: readonly AgreedLine[] = [line]) =>
  whyNotFitted(aJobAt('fitting', { orders: order ? [order] : [], agreedLines }), part);

describe('a part that was ordered is fitted', () => {
  it('when it came as ordered, is proved, and the owner agreed to it', () => {
    expect(why(came('ordered'))).toBeNull();
  });

  it('not before it is proved', () => {
    for (const standing of [
      { is: 'unproved', why: 'new' },
      { is: 'trial-grade', scopes: ['starts'] },
    ] as const)
      expect(why(came('ordered'), board({ standing }))).toMatchObject({ refused: 'prove-before-fitting', order: 'o1' });
  });

  it('not when it came dearer, until the owner agreed to its price: both prices are told', () => {
    const dearer = came('dearer', { cameMinor: 9500, priceMinor: 8200 });
    expect(why(dearer)).toMatchObject({ refused: 'dearer-needs-word', agreedMinor: 8000, priceMinor: 9500 });
    const again = 'q2' as QuestionId;
    const agreed = { ...line, question: again, priceMinor: 9500 };
    expect(why({ ...dearer, agreedBy: again }, board(), [agreed])).toBeNull();
  });

  it('not when nobody agreed to any price: what was ordered for stands for it', () => {
    expect(why(came('dearer', { cameMinor: 9500, priceMinor: 8200 }), board(), [])).toMatchObject({
      refused: 'dearer-needs-word',
      agreedMinor: 8200,
    });
  });

  it.each(['wrong', 'dead'] as const)('not when it came as the %s one, however good it is', (received) => {
    expect(why(came(received))).toMatchObject({ refused: 'order-goes-back', as: received });
  });

  it('not once it was sent back, or its order was called off or settled', () => {
    expect(why(came('ordered', { sentBackAt: epochMs(2) }))).toMatchObject({ refused: 'order-goes-back' });
    expect(why(came('ordered', { cancelled: 'too late' }))).toMatchObject({ refused: 'order-goes-back' });
  });

  it('not when the owner never said yes to it, or took the word back', () => {
    expect(why(came('ordered', { cameMinor: 8000 }), board(), [])).toMatchObject({
      refused: 'order-has-no-word',
      priceMinor: 8000,
    });
    expect(why(came('ordered'), board(), [{ ...line, question: 'other' }])).toMatchObject({
      refused: 'order-has-no-word',
    });
  });

  it('by the last order it came for', () => {
    const orders = [came('dead'), came('ordered', { order: 'o2' })];
    expect(whyNotFitted(aJobAt('fitting', { orders, agreedLines: [line] }), board())).toBeNull();
    expect(
      whyNotFitted(aJobAt('fitting', { orders: orders.toReversed(), agreedLines: [line] }), board()),
    ).toMatchObject({ refused: 'order-goes-back', order: 'o1' });
  });
});

describe('a part that nobody ordered', () => {
  it('has nothing in its way here', () => {
    expect(why(null)).toBeNull();
    expect(why(came('dead', { part: 'another' as PartId }))).toBeNull();
  });

  it('and that the owner brought is proved first', () => {
    const brought = (standing: Part['standing']) => aPart({ id: 'board' as PartId, kind: 'board', standing });
    expect(why(null, brought({ is: 'unproved', why: OWNERS_OWN }))).toMatchObject({ refused: 'prove-before-fitting' });
    expect(why(null, brought({ is: 'unproved', why: 'sat in a wet case' }))).toBeNull();
    expect(why(came('owners-own'), brought(KNOWN_GOOD), [])).toBeNull();
  });
});
