import { describe, expect, it } from 'vitest';
import { epochMs } from '../../time.ts';
import { type Order, placed } from '../orders/order.ts';
import { daysTaken, ownLead } from './leadTimes.ts';

const STATED = { low: 1, likely: 2, high: 7 };
const DAY = 86_400_000;
const order = (days: number | null, received: Order['received'] = 'ordered'): Order => ({
  ...placed({ order: 'o', what: 'a board', supplier: 's', priceMinor: 1, due: null, question: null }, epochMs(DAY)),
  ...(days === null ? {} : { received, cameAt: epochMs(DAY + days * DAY) }),
});

describe('what parts take from ordering to having', () => {
  it('is as stated until an order has come; one on the way and the owner’s own part say nothing', () => {
    expect(daysTaken([order(null), order(3, 'owners-own')])).toEqual([]);
    expect(ownLead(STATED, [])).toMatchObject({ next: STATED, orders: 0 });
  });
  it('counts what came wrong, dead or dearer too: it was waited for', () => {
    expect(daysTaken([order(4, 'wrong'), order(5, 'dead'), order(6, 'dearer')])).toEqual([4, 5, 6]);
  });
  it('moves little with two orders, which are too few to say, and most of the way with sixty', () => {
    const [few, many] = [2, 60].map((n) =>
      ownLead(
        STATED,
        Array.from({ length: n }, (_, i) => 5 + (i % 3)),
      ),
    );
    expect(few?.says).toBe('too-few-to-say');
    expect(few?.next.likely).toBeGreaterThan(2);
    expect(few?.next.likely).toBeLessThan(4);
    expect(many?.says).toBe('longer');
    expect(many?.next.likely).toBeGreaterThan(5);
    expect((many?.next.high ?? 0) / (many?.next.low ?? 1)).toBeLessThan((few?.next.high ?? 0) / (few?.next.low ?? 1));
  });
});
