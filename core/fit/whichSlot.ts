import type { Part } from '../custody/ledger.ts';
import type { Machine } from '../custody/machine.ts';
import type { PartFacts } from '../custody/part.ts';
import { takesKind } from '../custody/slot.ts';
import type { PartId } from '../ids.ts';
import { fits } from './fits.ts';
import type { MachineView } from './machineView.ts';
import type { Fit, Says } from './reason.ts';

/** How a part fits in one slot. */
export type SlotFit = { readonly slot: string; readonly fit: Fit };

/** The machine with its own parts where they sat at taking-in: what a loaner is tried in place of, wherever they lie now. */
export const asTakenIn = (machine: Machine, parts: ReadonlyMap<PartId, Part>): MachineView => ({
  slots: { slots: machine.slots, gaps: machine.gaps },
  parts: Object.entries(machine.atTakingIn).flatMap(([slot, id]) => {
    const part = parts.get(id);
    return part ? [{ slot, part }] : [];
  }),
});

const BEST: readonly Says[] = ['yes', 'unknown', 'no'];

/** How a part fits in each slot that its kind goes into, in place of what sits there: the best first, then in slot order. */
export function fitsBySlot(part: PartFacts, machine: MachineView): readonly SlotFit[] {
  return machine.slots.slots
    .filter((slot) => takesKind(slot.takes, part.kind))
    .map(({ id }) => ({ slot: id, fit: fits(part, id, machine) }))
    .toSorted((a, b) => BEST.indexOf(a.fit.fits) - BEST.indexOf(b.fit.fits));
}

/** Would a part go into one of the slots that its kind has here? Without a slot known for it, that is unknown. */
export const fitsSomewhere = (part: PartFacts, machine: MachineView): Says =>
  fitsBySlot(part, machine)[0]?.fit.fits ?? 'unknown';
