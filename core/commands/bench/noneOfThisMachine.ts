import type { View } from '../../entries/view.ts';
import type { PartId } from '../../ids.ts';
import type { Refusal } from '../../refusal.ts';

/** What a command names of the machine on the bench. */
type Named = {
  readonly slots?: readonly string[];
  /** Parts that belong to it, or came for it. */
  readonly parts?: readonly PartId[];
  /** A part of ours that is tried in it. */
  readonly loaner?: PartId | null;
};

/**
 * Why something that a command names is none of this machine's: a slot that it has not, a part that nobody knows, or
 * that never was in it nor came for its job, a loaner that is not ours. Null where all of it is there. Asked before
 * anything is decided, so that a mistyped name is refused and not passed over.
 */
export function noneOfThisMachine(view: View, { slots = [], parts = [], loaner = null }: Named): Refusal | null {
  const { machine, job } = view;
  const slot = slots.find((id) => !machine?.slots.some((one) => one.id === id));
  if (slot !== undefined) return { refused: 'no-such-slot', slot, machine: machine?.called ?? '' };
  for (const id of parts) {
    const part = view.parts.get(id);
    if (!part) return { refused: 'no-such-part', part: id };
    if (!machine?.parts.includes(id) && !job?.parts.includes(id))
      return { refused: 'part-of-no-use-here', part: id, tag: part.tag, name: part.name, is: part.place };
  }
  if (loaner === null) return null;
  const lent = view.parts.get(loaner);
  if (!lent) return { refused: 'no-such-part', part: loaner };
  return lent.belongs.to === 'shop' ? null : { refused: 'loaner-not-ours', part: loaner, name: lent.name };
}
