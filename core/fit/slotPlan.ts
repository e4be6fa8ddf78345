import table from '../../assets/fit/slotPlans.json' with { type: 'json' };
import type { Attributes, ThingKind } from '../custody/part.ts';
import { THING_KINDS } from '../custody/part.ts';
import type { Slot, SlotPlan, SlotSource } from '../custody/slot.ts';
import { oneOf } from '../table.ts';
import { numberFact, textOf } from './values.ts';

/**
 * A slot plan from what the board is known to have; what is not known is filled by what a board of its size usually has
 * and named in `gaps`. A board of unknown size gets only what every machine has. DIMM slots are named by channel and place,
 * the usual print on boards with two channels; the board's own print replaces them by hand.
 */
export function slotPlanForBoard(board: Attributes): SlotPlan {
  const usual = table.boards.find((row) => row.form === textOf(board, 'form-factor'));
  const gaps: string[] = usual ? [] : ['form-factor'];
  const count = (attribute: string, fromSize: number | undefined): number => {
    const known = numberFact(board, attribute);
    if (known === undefined) gaps.push(attribute);
    return known ?? fromSize ?? 0;
  };
  const dimms = count('dimm-slots', usual?.dimmSlots);
  const channels = numberFact(board, 'memory-channels') ?? (dimms > 1 ? usual?.channels : 1) ?? 1;
  if (dimms > 1 && numberFact(board, 'memory-channels') === undefined) gaps.push('memory-channels');
  const slots: Slot[] = [
    ...table.always.map(({ id, takes }) => ({
      id,
      takes: oneOf(THING_KINDS, takes),
      order: 1,
      source: 'template' as const,
    })),
    ...dimmSlots(dimms, channels),
    ...many(
      'card',
      (n) => (n === 1 ? 'x16' : `x16_${n}`),
      count('x16-slots', usual?.x16) + count('further-x16-slots', usual?.furtherX16),
      { length: 16 },
    ),
    ...many('add-in', (n) => `x4_${n}`, count('further-x4-slots', usual?.x4), { length: 4 }),
    ...many('add-in', (n) => `x1_${n}`, count('further-x1-slots', usual?.x1), { length: 1 }),
    ...many('drive', (n) => `M2_${n}`, count('m2-slots', usual?.m2), { size: 'M.2' }),
    ...many('drive', (n) => `SATA ${n}`, count('sata-ports', usual?.sata), { bus: 'SATA' }),
    ...many('fan', (n) => `fan ${n}`, count('case-fan-plugs', usual?.fans), {}),
  ];
  return { slots: slots.map((slot, index) => ({ ...slot, order: orderWithin(slots, index) })), gaps };
}

/** DIMM slots in their order from the processor: A1, A2, B1, B2 for four slots in two channels. */
function dimmSlots(dimms: number, channels: number): readonly Slot[] {
  const each = dimms / channels;
  if (!Number.isInteger(each)) return many('dimm', (n) => `DIMM ${n}`, dimms, {});
  return Array.from({ length: dimms }, (_, index) => {
    const channel = String.fromCharCode(65 + Math.floor(index / each));
    return { id: `${channel}${(index % each) + 1}`, takes: 'dimm', order: index + 1, channel, source: 'template' };
  });
}

const many = (
  takes: ThingKind,
  id: (n: number) => string,
  count: number,
  attributes: NonNullable<Slot['attributes']>,
): readonly Slot[] =>
  Array.from({ length: count }, (_, index) => ({
    id: id(index + 1),
    takes,
    order: index + 1,
    source: 'template',
    attributes,
  }));

const orderWithin = (slots: readonly Slot[], index: number): number =>
  slots.slice(0, index + 1).filter((slot) => slot.takes === slots[index]?.takes).length;

/** What a person changes in a plan by looking: slots that are there, slots that are not, facts of a slot that is. */
export type SlotEdits = {
  readonly add?: readonly Omit<Slot, 'source' | 'order'>[];
  readonly drop?: readonly string[];
  readonly rename?: { readonly [id: string]: string };
  /** Gaps that a look has closed. */
  readonly looked?: readonly string[];
};
export type SlotEditRefusal = {
  readonly refused: 'slot-named-twice' | 'slot-not-there' | 'slot-has-no-name';
  readonly slot: string;
};

/** The plan after a person's look; what they touched is marked `by-hand`. Refused whole when a name is missing or used twice. */
export function slotPlanByHand(plan: SlotPlan, edits: SlotEdits): SlotPlan | SlotEditRefusal {
  const { add = [], drop = [], rename = {}, looked = [] } = edits;
  const missing = [...drop, ...Object.keys(rename)].find((id) => !plan.slots.some((slot) => slot.id === id));
  if (missing !== undefined) return { refused: 'slot-not-there', slot: missing };
  const byHand: SlotSource = 'by-hand';
  const kept = plan.slots
    .filter((slot) => !drop.includes(slot.id))
    .map((slot) =>
      rename[slot.id] === undefined ? slot : { ...slot, id: (rename[slot.id] ?? '').trim(), source: byHand },
    );
  const slots: Slot[] = [...kept, ...add.map((slot) => ({ ...slot, id: slot.id.trim(), order: 0, source: byHand }))];
  if (slots.some((slot) => slot.id === '')) return { refused: 'slot-has-no-name', slot: '' };
  const twice = slots.find((slot, index) => slots.findIndex((other) => other.id === slot.id) !== index);
  if (twice) return { refused: 'slot-named-twice', slot: twice.id };
  return {
    slots: slots.map((slot, index) => ({ ...slot, order: orderWithin(slots, index) })),
    gaps: plan.gaps.filter((gap) => !looked.includes(gap)),
  };
}
