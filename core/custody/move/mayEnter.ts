import type { PartId } from '../../ids.ts';
import type { Refusal } from '../../refusal.ts';
import type { EpochMs } from '../../time.ts';
import type { MoveReason, Part } from '../ledger.ts';
import { type Machine, slotRecorded } from '../machine.ts';
import { agreesWith, needsWord } from '../ownersWord.ts';
import { samePlace, slotOf } from '../place.ts';
import type { Move, MoveView } from './move.ts';
import { assemblyProblem, slotProblem } from './moveRefusals.ts';

/** Why the owner's word does not allow this place; null when it does, or none is needed. */
export function wordProblem({ word }: MoveView, part: Part, move: Move, at: EpochMs): Refusal | null {
  if (part.belongs.to !== 'owner' || !word || !needsWord(move.to)) return null;
  if (agreesWith(move.to, word, part.dataBearing, part.place.at === 'kept' && part.place.until <= at)) return null;
  return {
    refused: 'no-word-for-part',
    part: part.id,
    tag: part.tag,
    name: part.name,
    to: move.to,
    answer: word.answer,
    dataBearing: part.dataBearing,
  };
}

/** Why the place does not take the part; null when it does. */
export function targetProblem(view: MoveView, part: Part, move: Move): Refusal | null {
  if (move.to.at === 'with') return assemblyProblem(part, view.other(move.to.part)) ?? apart(view, part, move.to.part);
  const target = slotOf(move.to);
  if (!target) return null;
  const machine = view.machine(target.machine);
  const inside = machine?.inside[target.slot];
  return (
    slotProblem(machine, target.slot, part, inside ? view.other(inside) : null) ??
    ownSlotProblem(machine, target.slot, part, move)
  );
}

/** Parts are joined where both lie: in one place, or in one machine. */
function apart(view: MoveView, part: Part, id: PartId): Refusal | null {
  const carrier = view.other(id);
  if (!carrier) return null;
  const [a, b] = [slotOf(part.place), slotOf(carrier.place)];
  const together = samePlace(part.place, carrier.place) || (a !== null && b !== null && a.machine === b.machine);
  if (together) return null;
  return {
    refused: 'parts-lie-apart',
    part: part.id,
    name: part.name,
    carrier: carrier.name,
    is: part.place,
    carrierIs: carrier.place,
    since: carrier.since,
  };
}

/** Reasons that say themselves why a part goes elsewhere than recorded. */
const SAYS_WHY: readonly MoveReason['by'][] = [
  'step',
  'proof',
  'back-to-worked',
  'wrong-slot-put-right',
  'board-has-only-these',
  'righting',
];

function ownSlotProblem(machine: Machine | null, slot: string, part: Part, { why }: Move): Refusal | null {
  const saidWhy = SAYS_WHY.includes(why.by) || ('says' in why && why.says !== undefined);
  if (machine?.owner === null || part.belongs.to !== 'owner' || saidWhy) return null;
  const recorded = machine && slotRecorded(machine, part.id);
  if (recorded === null || recorded === slot) return null;
  return { refused: 'not-its-own-slot', part: part.id, name: part.name, recorded, slot };
}
