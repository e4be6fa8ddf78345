import { expect, it } from 'vitest';
import { AM_B46, WF_M2 } from '../../../tests/builders/harrowmouth.ts';
import type { View } from '../../entries/view.ts';
import { slotPlanForBoard } from '../../fit/slotPlan.ts';
import { partId } from '../../ids.ts';
import { compareForOffer } from './compareForOffer.ts';

const part = (id: string, kind: string, attributes: object = {}, at?: string) => ({
  id: partId(id),
  kind,
  name: id,
  attributes,
  at,
});
const [had, offered] = [part('had', 'board', AM_B46), part('offered', 'board', WF_M2)];

/** Their machine with these inside, as it was taken in; the part on offer lies on the wall. */
const view = (...inside: readonly ReturnType<typeof part>[]) =>
  ({
    parts: new Map([had, offered, ...inside].map((one) => [one.id, one])),
    machine: {
      slots: slotPlanForBoard(AM_B46).slots,
      atTakingIn: Object.fromEntries(inside.map(({ id, at }) => [at ?? `slot-${id}`, id])),
    },
    job: null,
  }) as unknown as View;

const notes = (seen: View, row: string, uses = {}) => {
  const compared = compareForOffer(seen, had.id, offered.id, uses);
  if ('refused' in compared) throw new Error(compared.refused);
  return compared.rows.find(({ attribute }) => attribute === row)?.notes;
};
const modules = (count: number) => Array.from({ length: count }, (_, n) => part(`module-${n}`, 'dimm'));

it('counts what the machine has inside: its modules against the slots of the part on offer', () => {
  expect(notes(view(...modules(1)), 'dimm-slots')).toContainEqual(expect.objectContaining({ uses: 1 }));
  expect(notes(view(...modules(2)), 'dimm-slots')).toContainEqual(expect.objectContaining({ uses: 2 }));
});

it('counts a drive on a SATA lead for a SATA plug', () => {
  const inside = view(part('a', 'drive', { bus: 'SATA 6 Gb/s' }), part('b', 'drive', { bus: 'SATA 3 Gb/s' }));
  expect(notes(inside, 'sata-ports')).toContainEqual(expect.objectContaining({ uses: 2 }));
});

it('counts a drive for the slot it sits in: on M.2 whatever bus it speaks, and none there of which nobody knows the bus', () => {
  const inside = view(
    part('a', 'drive', { bus: 'SATA 6 Gb/s' }, 'SATA 1'),
    part('b', 'drive', { bus: 'SATA 6 Gb/s' }, 'M2_1'),
    part('c', 'drive', {}, 'SATA 2'),
  );
  expect(notes(inside, 'm2-slots')).toContainEqual(expect.objectContaining({ uses: 1 }));
  expect(notes(inside, 'sata-ports')).toContainEqual(expect.objectContaining({ uses: 1 }));
});

it('hears what only the owner knows before what was counted', () => {
  expect(notes(view(...modules(1)), 'dimm-slots', { 'dimm-slots': 2 })).toContainEqual(
    expect.objectContaining({ uses: 2 }),
  );
});

it('is refused for a part that the job does not see, by its name', () => {
  const strange = partId('strange');
  expect(compareForOffer(view(), strange, offered.id)).toEqual({ refused: 'no-such-part', part: strange });
  expect(compareForOffer(view(), had.id, strange)).toEqual({ refused: 'no-such-part', part: strange });
});
