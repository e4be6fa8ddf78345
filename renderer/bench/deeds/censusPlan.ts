import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Slot } from '../../../core/custody/slot.ts';
import { slotPlanForBoard } from '../../../core/fit/slotPlan.ts';
import type { SlotsAndParts } from '../../../core/readings/slotsAndParts.ts';

/** What a report may leave open of memory slots; the usual board's guess counts no more beside it. */
const DIMM_GAPS: readonly string[] = ['dimm-slots', 'memory-channels', 'dimm-order'];

/** The slots the machine is known to have, else what its own report names, else what a board of its size usually has. */
export function planFor(
  sheet: JobSheet,
  form: string | null,
  told: SlotsAndParts | null,
): { readonly slots: readonly Slot[]; readonly gaps: readonly string[] } {
  const { machine } = sheet;
  if (machine.slots.length > 0) return { slots: machine.slots, gaps: machine.gaps };
  const said = told?.slots.filter(({ takes }) => takes === 'dimm') ?? [];
  const usual = slotPlanForBoard({
    ...(form !== null && { 'form-factor': form }),
    ...(said.length > 0 && { 'dimm-slots': said.length }),
  });
  if (said.length === 0) return usual;
  const order = told?.gaps.filter((gap) => DIMM_GAPS.includes(gap)) ?? [];
  return {
    slots: [...usual.slots.filter(({ takes }) => takes !== 'dimm'), ...said],
    gaps: [...usual.gaps.filter((gap) => !DIMM_GAPS.includes(gap)), ...order],
  };
}
