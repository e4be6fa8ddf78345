import type { PartId } from '../../ids.ts';
import type { Part } from '../ledger.ts';
import type { Machine } from '../machine.ts';
import type { Tag } from '../part.ts';
import type { Place } from '../place.ts';

/** A part as one side of a slot shows it. */
export type Sitting = {
  readonly part: PartId;
  readonly name: string;
  readonly tag: Tag | null;
  readonly whose: 'shop' | 'owner';
};

/** One slot: what was in it at taking-in, what is in it now, and where what came out is. */
export type SlotThenNow = {
  readonly slot: string;
  readonly came: (Sitting & { readonly is: Place }) | null;
  readonly now: Sitting | null;
  readonly same: boolean;
};

/**
 * What was inside a machine at taking-in against what is inside now, slot by slot, and whose. A part that only changed
 * its slot shows in both; one that moves with another is where that one is.
 */
export function inAgainstOut(machine: Machine, parts: ReadonlyMap<PartId, Part>): readonly SlotThenNow[] {
  const slots = new Set([
    ...machine.slots.map((slot) => slot.id),
    ...Object.keys(machine.atTakingIn),
    ...Object.keys(machine.inside),
  ]);
  const sitting = (id: PartId | undefined): Sitting | null => {
    const part = id === undefined ? undefined : parts.get(id);
    return part ? { part: part.id, name: part.name, tag: part.tag, whose: part.belongs.to } : null;
  };
  return [...slots].flatMap((slot) => {
    const atTakingIn = machine.atTakingIn[slot];
    const was = atTakingIn && parts.get(atTakingIn);
    const came = sitting(atTakingIn);
    const now = sitting(machine.inside[slot]);
    if (!came && !now) return [];
    return [{ slot, came: came && was ? { ...came, is: was.place } : null, now, same: came?.part === now?.part }];
  });
}
