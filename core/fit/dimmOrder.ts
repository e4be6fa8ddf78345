import table from '../../assets/fit/dimmOrder.json' with { type: 'json' };
import { dimmSlotsOf, type MachineView } from './machineView.ts';

/** Which slots to fill, and what that rests on. */
export type DimmOrder = {
  readonly fill: readonly string[];
  readonly evidence: 'board-manual' | 'default';
  readonly source: string;
};

/**
 * Which DIMM slots to fill for a number of modules. The board's manual decides; without it a common default is offered,
 * as such, where the board has two or four slots named by channel and place (manuals disagree, and on some boards the
 * wrong order does not start). `undefined`: nothing to offer, read the manual.
 */
export function dimmOrder(machine: Pick<MachineView, 'slots' | 'dimmOrder'>, modules: number): DimmOrder | undefined {
  const manual = machine.dimmOrder?.[modules];
  if (manual) return { fill: manual, evidence: 'board-manual', source: 'board-manual' };
  const ids = dimmSlotsOf({ ...machine, parts: [] }).map((slot) => slot.id);
  const row = table.defaults.find(
    (entry) => entry.slots === ids.length && entry.modules === modules && entry.fill.every((id) => ids.includes(id)),
  );
  return row && { fill: row.fill, evidence: 'default', source: row.source };
}
