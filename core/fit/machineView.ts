import type { Attributes, PartFacts, ThingKind } from '../custody/part.ts';
import type { Slot, SlotPlan } from '../custody/slot.ts';
import type { AttributeValue } from './attributes.ts';
import type { LookAt } from './reason.ts';

/** Slot ids to fill for a number of modules, as the board's own manual says. */
type ManualOrder = { readonly [modules: number]: readonly string[] };

/** A machine (or rig) as fit sees it: its slots, and the parts in them now, whoever owns them. */
export type MachineView = {
  readonly slots: SlotPlan;
  readonly parts: readonly { readonly slot: string; readonly part: PartFacts }[];
  /** What the board's manual says about filling the DIMM slots, where someone has read it. */
  readonly dimmOrder?: ManualOrder;
};

/** The machine without what sits in one slot: a part is tried in its place. */
export const emptied = (machine: MachineView, slot: string): MachineView => ({
  ...machine,
  parts: machine.parts.filter((held) => held.slot !== slot),
});

/** The parts of these kinds that are in the machine. */
export const partsOf = (machine: MachineView, ...kinds: readonly ThingKind[]): readonly PartFacts[] =>
  machine.parts.filter(({ part }) => kinds.includes(part.kind)).map(({ part }) => part);

/** The only part of its kind that a machine has one of. */
export const theOne = (machine: MachineView, kind: ThingKind): PartFacts | undefined => partsOf(machine, kind)[0];

/** An attribute of the machine's board, case, supply … as one side of a ground. */
export const sideOf = (
  machine: MachineView,
  kind: ThingKind,
  attribute: string,
): { value: AttributeValue | undefined; look: LookAt } => ({
  value: theOne(machine, kind)?.attributes[attribute],
  look: { at: kind, attribute },
});

/** An attribute of the part in question as one side of a ground. */
export const partSide = (
  attributes: Attributes,
  attribute: string,
): { value: AttributeValue | undefined; look: LookAt } => ({
  value: attributes[attribute],
  look: { at: 'part', attribute },
});

/** An attribute of the slot in question as one side of a ground. */
export const slotSide = (slot: Slot, attribute: string): { value: AttributeValue | undefined; look: LookAt } => ({
  value: slot.attributes?.[attribute],
  look: { at: 'slot', attribute },
});

/** The slot of this id; undefined where the machine has none. */
export const slotById = (machine: MachineView, id: string): Slot | undefined =>
  machine.slots.slots.find((slot) => slot.id === id);

/** The slots for memory, in the board's order. */
export const dimmSlotsOf = (machine: MachineView): readonly Slot[] =>
  machine.slots.slots.filter((slot) => slot.takes === 'dimm').toSorted((a, b) => a.order - b.order);
