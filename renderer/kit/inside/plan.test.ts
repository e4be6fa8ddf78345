import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ThingKind } from '../../../core/custody/part.ts';
import { type InsideSlot, withUnseen } from './model.ts';
import { type Box, CASE, FRONT, planOf } from './plan.ts';

const slot = (id: string, takes: ThingKind, order = 1): InsideSlot => ({
  slot: { id, takes, order, source: 'by-hand' },
  holds: null,
  away: null,
  seen: true,
});
const overlap = (a: Box, b: Box) =>
  a.x < b.x + b.w - 1e-6 && b.x < a.x + a.w - 1e-6 && a.y < b.y + b.h - 1e-6 && b.y < a.y + a.h - 1e-6;
const within = (box: Box, frame: Box) =>
  box.x >= frame.x &&
  box.y >= frame.y &&
  box.x + box.w <= frame.x + frame.w + 1e-6 &&
  box.y + box.h <= frame.y + frame.h + 1e-6;

describe('the drawing of this machine', () => {
  it('draws a machine of which nothing is known: board, socket, memory, card, supply and drive, none of them seen', () => {
    const slots = withUnseen([]);
    expect(slots.map((one) => one.slot.takes)).toEqual(['board', 'processor', 'dimm', 'card', 'supply', 'drive']);
    expect(slots.every((one) => !one.seen)).toBe(true);
    expect(planOf(slots).slots).toHaveLength(6);
  });
  it('sets DIMM slots in their order from the processor, whatever order they are told in', () => {
    const plan = planOf([slot('B2', 'dimm', 4), slot('A1', 'dimm', 1), slot('B1', 'dimm', 3), slot('A2', 'dimm', 2)]);
    expect(plan.dimms.map((one) => one.it.slot.id)).toEqual(['A1', 'A2', 'B1', 'B2']);
    expect(plan.dimms.map((one) => one.box.x)).toEqual([...plan.dimms.map((one) => one.box.x)].sort((a, b) => a - b));
  });
  it('gives every slot its own place inside the case, for up to 8 DIMMs, 3 M.2, 5 cards and 8 bays', () => {
    const count = (most: number) => fc.integer({ min: 0, max: most });
    fc.assert(
      fc.property(
        count(8),
        count(3),
        count(5),
        count(8),
        fc.constantFrom('ATX', 'microATX', 'Mini-ITX', undefined),
        (dimms, m2, cards, bays, form) => {
          const many = (n: number, name: string, takes: ThingKind) =>
            Array.from({ length: n }, (_, i) => slot(`${name}${i + 1}`, takes, i + 1));
          const plan = planOf(
            [
              ...many(dimms, 'D', 'dimm'),
              ...many(m2, 'M2_', 'drive'),
              ...many(cards, 'x', 'card'),
              ...many(bays, 'SATA', 'drive'),
              slot('supply', 'supply'),
              slot('opt', 'optical-drive'),
            ],
            form,
          );
          const boxes = plan.slots.map((one) => one.box);
          expect(plan.slots.filter((one) => one.look === 'card')).toHaveLength(cards);
          for (const [i, a] of boxes.entries()) {
            expect(within(a, CASE) || within(a, FRONT)).toBe(true);
            for (const b of boxes.slice(i + 1)) expect(overlap(a, b)).toBe(false);
          }
        },
      ),
    );
  });
});
