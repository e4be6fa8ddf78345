import type { JobId } from '../../ids.ts';
import type { Refusal } from '../../refusal.ts';
import type { Part } from '../ledger.ts';
import type { Machine } from '../machine.ts';
import { takesKind } from '../slot.ts';

/** Who has a part that was thought elsewhere, and since when. */
export const notThere = (part: Part, said: Part['place']): Refusal => ({
  refused: 'part-not-there',
  part: part.id,
  tag: part.tag,
  name: part.name,
  said,
  is: part.place,
  since: part.since,
  movedBy: part.movedBy,
});

/** A job has the part, or it lies with none; `carrier` is what it goes with, where that knows better. */
export const partOut = (part: Part, heldBy: JobId | null, carrier: Part = part): Refusal => ({
  refused: 'part-out',
  part: part.id,
  tag: part.tag,
  name: part.name,
  heldBy,
  is: carrier.place,
  since: carrier.since,
  movedBy: carrier.movedBy,
});

/** Which job a part is held for, by whom and since when. */
export const heldFor = (part: Part): Refusal => ({
  refused: 'part-reserved',
  part: part.id,
  tag: part.tag,
  name: part.name,
  heldBy: part.reservedFor,
  since: part.reserved?.at ?? part.since,
  by: part.reserved?.by ?? part.movedBy,
});

/** Why this slot does not take the part now; null when it does. */
export function slotProblem(
  machine: Machine | null,
  slot: string,
  part: Pick<Part, 'kind' | 'name'> & { readonly id?: Part['id'] },
  sitting: Part | null,
): Refusal | null {
  if (!machine) return { refused: 'no-such-machine', slot };
  const found = machine.slots.find((one) => one.id === slot);
  if (!found) return { refused: 'no-such-slot', slot, machine: machine.called };
  if (!takesKind(found.takes, part.kind))
    return {
      refused: 'wrong-kind-for-slot',
      slot,
      takes: found.takes,
      part: part.id ?? null,
      name: part.name,
      kind: part.kind,
    };
  const inside = machine.inside[slot];
  if (inside)
    return {
      refused: 'slot-occupied',
      slot,
      machine: machine.called,
      by: sitting?.name ?? inside,
      since: sitting?.since ?? null,
      movedBy: sitting?.movedBy ?? null,
    };
  return null;
}

/**
 * Why a part cannot move as one with another; null when it can. An assembly is one deep, of one owner, and joined where
 * both lie; a lead goes with no supply but its own, however alike the plugs look.
 */
export function assemblyProblem(part: Part, carrier: Part | null): Refusal | null {
  if (!carrier) return { refused: 'no-such-part', part: part.id };
  const names = { part: part.id, name: part.name, carrier: carrier.name };
  if (part.dataBearing) return { refused: 'data-part-moves-alone', ...names };
  if (carrier.id === part.id || part.riders.length > 0 || carrier.place.at === 'with')
    return { refused: 'assembly-too-deep', ...names };
  if (JSON.stringify(part.belongs) !== JSON.stringify(carrier.belongs))
    return { refused: 'assembly-of-two-owners', ...names };
  if (part.kind === 'lead' && part.companion !== null && part.companion !== carrier.id)
    return { refused: 'lead-of-another-supply', ...names };
  return null;
}
