import type { PartFacts } from '../custody/part.ts';
import { type Slot, takesKind } from '../custody/slot.ts';
import { emptied, type MachineView, slotById } from './machineView.ts';
import { type Fact, type Fit, type Reason, weighed } from './reason.ts';
import { boardReasons } from './rules/board.ts';
import { dimmReasons } from './rules/memory.ts';
import { addInReasons, cardReasons, caseReasons, cellReasons, driveReasons, fanReasons } from './rules/places.ts';
import { leadReasons } from './rules/power.ts';
import { coolerReasons, processorReasons } from './rules/processor.ts';
import { supplyReasons } from './rules/supply.ts';

/**
 * Does this part fit in that slot of this machine, in place of what sits there now?
 * `no` when one ground says no; `unknown` while a fact that decides is not known, with what to look at; `yes` only
 * when every ground says yes. Whether the slot is free, and whether the part may go there, is custody's to say.
 */
export function fits(part: PartFacts, slotId: string, machine: MachineView): Fit {
  const slot = slotById(machine, slotId);
  if (!slot)
    return weighed([
      { ...slotFact('slot-exists', part, null), says: 'unknown', look: [{ at: 'board', attribute: slotId }] },
    ]);
  if (!takesKind(slot.takes, part.kind)) return weighed([{ ...slotFact('slot-takes', part, slot.takes), says: 'no' }]);
  if (isSoldered(slot, machine)) return weighed([{ ...slotFact('soldered', part, true), says: 'no' }]);
  const takes: Reason = { ...slotFact('slot-takes', part, slot.takes), says: 'yes' };
  const reasons = reasonsFor(part, slot, emptied(machine, slotId));
  return weighed([
    takes,
    ...(reasons ?? [
      {
        ...slotFact('no-rule', part, slot.takes),
        says: 'unknown' as const,
        look: [{ at: 'slot', attribute: 'takes' } as const],
      },
    ]),
  ]);
}

const slotFact = (fact: Fact, part: PartFacts, place: string | boolean | null) => ({
  fact,
  source: 'recorded',
  part: part.kind,
  place,
  look: [],
});

/** What is soldered down cannot be changed for another, however well that would suit. */
function isSoldered(slot: Slot, machine: MachineView): boolean {
  const inside = machine.parts.find((held) => held.slot === slot.id)?.part;
  return slot.attributes?.soldered === true || inside?.attributes.soldered === true;
}

function reasonsFor(part: PartFacts, slot: Slot, machine: MachineView): readonly Reason[] | undefined {
  switch (part.kind) {
    case 'dimm':
      return dimmReasons(part.attributes, slot, machine);
    case 'processor':
      return processorReasons(part, machine);
    case 'cooler':
      return coolerReasons(part, machine);
    case 'board':
      return boardReasons(part, machine);
    case 'card':
      return cardReasons(part, slot, machine);
    case 'add-in':
      return addInReasons(part, slot);
    case 'supply':
      return supplyReasons(part, machine);
    case 'drive':
    case 'optical-drive':
      return driveReasons(part, slot, machine);
    case 'fan':
      return fanReasons(part, machine);
    case 'case':
      return caseReasons(part, machine);
    case 'cell':
      return cellReasons(part, slot);
    case 'lead':
      return leadReasons(part.attributes, machine);
    default:
      return undefined;
  }
}
