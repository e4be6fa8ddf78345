import type { SaidCardSlot } from '../custody/machineReport.ts';
import type { Slot } from '../custody/slot.ts';

/** Slots of type-9 records (DSP0134 7.10), named as the board or its firmware names them. */
export function cardSlotPlan(
  said: readonly SaidCardSlot[],
  taken: ReadonlySet<string>,
): readonly { readonly slot: Slot; readonly inUse: boolean | null }[] {
  const ids = new Set(taken);
  const orders = new Map<string, number>();
  return said.slice(0, MOST).map(({ designation, type, usage }) => {
    const kind = kindOf(type);
    const order = (orders.get(kind.takes) ?? 0) + 1;
    orders.set(kind.takes, order);
    const slot: Slot = { id: free(designation.slice(0, LONGEST), ids), order, source: 'own-report', ...kind };
    return { slot, inUse: usage === 'unknown' ? null : usage === 'in-use' };
  });
}

const MOST = 64;
const LONGEST = 60;

function free(name: string, ids: Set<string>): string {
  let id = name;
  for (let n = 2; ids.has(id); n += 1) id = `${name} (${n})`;
  ids.add(id);
  return id;
}

/**
 * `x16 PCI Express 3 x16`: lanes stand before the name, the length of the slot behind it, where it is said.
 * Sixteen lanes need a slot of that length; fewer lanes say nothing of it.
 */
function kindOf(type: string): Pick<Slot, 'takes' | 'attributes'> {
  if (/\bM\.2\b/.test(type)) return { takes: /Socket 1/.test(type) ? 'add-in' : 'drive', attributes: { size: 'M.2' } };
  if (/\bAGP\b/.test(type)) return { takes: 'card', attributes: { bus: 'AGP' } };
  if (!/PCI Express|PCIe/i.test(type))
    return { takes: 'add-in', ...(/PCI/.test(type) && { attributes: { bus: 'PCI' } }) };
  const lanes = Number(/^x(\d+) /.exec(type)?.[1] ?? 0);
  const length = Number(/ x(\d+)$/.exec(type)?.[1] ?? (lanes === 16 ? 16 : 0));
  const generation = Number(/PCI Express (\d)/.exec(type)?.[1] ?? 0);
  return {
    takes: Math.max(lanes, length) === 16 ? 'card' : 'add-in',
    attributes: {
      bus: 'PCIe',
      ...(lanes > 0 && { lanes }),
      ...(length > 0 && { length }),
      ...(generation > 0 && { generation }),
    },
  };
}
