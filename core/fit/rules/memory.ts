import memoryTable from '../../../assets/fit/memory.json' with { type: 'json' };
import socketTable from '../../../assets/fit/sockets.json' with { type: 'json' };
import type { Attributes } from '../../custody/part.ts';
import type { Slot } from '../../custody/slot.ts';
import { dimmOrder } from '../dimmOrder.ts';
import { dimmSlotsOf, type MachineView, partSide, partsOf, sideOf, theOne } from '../machineView.ts';
import { atMost, ground, type Reason, type Says, type Source } from '../reason.ts';
import { listOf, numberFact, textOf } from '../values.ts';

/** Grounds for a memory module in a DIMM slot. `machine` is without what sits in that slot now. */
export function dimmReasons(attributes: Attributes, slot: Slot, machine: MachineView): readonly Reason[] {
  return [
    generation(attributes, slot, machine),
    moduleForm(attributes, machine),
    buffering(attributes, machine),
    ...setSize(attributes, machine),
    ...mostMemory(attributes, machine),
    ...speed(attributes, machine),
    ...slotOrder(attributes, slot, machine),
  ];
}

type Taken = { readonly memory: readonly string[]; readonly source: Source; readonly decides: boolean };

/** What memory the board takes, from the best that is known: the slot, the board, its socket, the modules that sit in it. */
function memoryTaken(slot: Slot, machine: MachineView): Taken | undefined {
  const recorded =
    (slot.attributes && listOf(slot.attributes, 'memory')) ??
    listOf(theOne(machine, 'board')?.attributes ?? {}, 'memory');
  if (recorded) return { memory: recorded, source: 'recorded', decides: recorded.length === 1 };
  const inside = [...new Set(partsOf(machine, 'dimm').flatMap((part) => listOf(part.attributes, 'memory') ?? []))];
  if (inside.length === 1) return { memory: inside, source: 'modules-inside', decides: true };
  const socket = [theOne(machine, 'board'), theOne(machine, 'processor')]
    .map((part) => part && textOf(part.attributes, 'socket'))
    .find(Boolean);
  const row = socketTable.memory.find((entry) => entry.socket === socket && entry.read);
  return row && { memory: row.memory, source: row.source, decides: row.memory.length === 1 };
}

function generation(attributes: Attributes, slot: Slot, machine: MachineView): Reason {
  const taken = memoryTaken(slot, machine);
  const place = { value: taken?.memory, look: { at: 'board', attribute: 'memory' } } as const;
  return ground('memory-kind', partSide(attributes, 'memory'), place, judge, {
    source: taken?.source === 'recorded' ? memoryTable.rule.source : (taken?.source ?? memoryTable.rule.source),
  });

  function judge(): Says {
    const kinds = listOf(attributes, 'memory') ?? [];
    const takes = taken?.memory ?? [];
    if (kinds.some((kind) => takes.includes(kind))) return taken?.decides ? 'yes' : 'unknown';
    // The voltage of a low-voltage DDR3 module or board is printed on it; whether the two agree nobody has recorded.
    if ([...kinds, ...takes].every((kind) => kind.startsWith('DDR3'))) return 'unknown';
    return taken?.source === 'modules-inside' ? 'unknown' : 'no';
  }
}

const formOf = (module: string) => (module.startsWith('SO-') ? 'SO-DIMM' : 'DIMM');
const BUFFERING: Readonly<Record<string, string>> = {
  UDIMM: 'unbuffered',
  'SO-UDIMM': 'unbuffered',
  CUDIMM: 'unbuffered',
  RDIMM: 'registered',
  'SO-RDIMM': 'registered',
  LRDIMM: 'load-reduced',
};

/** Module types the board takes: as recorded, else as the modules that sit in it. */
function modulesTaken(
  machine: MachineView,
): { readonly modules: readonly string[]; readonly source: Source } | undefined {
  const recorded = listOf(theOne(machine, 'board')?.attributes ?? {}, 'module');
  if (recorded) return { modules: recorded, source: 'recorded' };
  const inside = [...new Set(partsOf(machine, 'dimm').flatMap((part) => listOf(part.attributes, 'module') ?? []))];
  return inside.length > 0 ? { modules: inside, source: 'modules-inside' } : undefined;
}

function moduleForm(attributes: Attributes, machine: MachineView): Reason {
  const [taken, module] = [modulesTaken(machine), listOf(attributes, 'module')?.[0]];
  const forms: readonly string[] | undefined = taken?.modules.map(formOf);
  return ground(
    'module-form',
    { value: module && formOf(module), look: { at: 'part', attribute: 'module' } },
    { value: forms && [...new Set(forms)], look: { at: 'board', attribute: 'module' } },
    ({ part }) => (forms?.includes(String(part)) ? 'yes' : 'no'),
    { source: taken?.source ?? 'recorded' },
  );
}

function buffering(attributes: Attributes, machine: MachineView): Reason {
  const [taken, module] = [modulesTaken(machine), listOf(attributes, 'module')?.[0]];
  const takes = taken?.modules.map((each) => BUFFERING[each]).filter((each) => each !== undefined);
  return ground(
    'registered',
    { value: module && BUFFERING[module], look: { at: 'part', attribute: 'module' } },
    { value: takes && takes.length > 0 ? takes : undefined, look: { at: 'board', attribute: 'module' } },
    ({ part }) => (takes?.includes(String(part)) ? 'yes' : taken?.source === 'recorded' ? 'no' : 'unknown'),
    { source: taken?.source ?? 'recorded' },
  );
}

/** A module is alone unless it is recorded as a set. */
function setSize(attributes: Attributes, machine: MachineView): readonly Reason[] {
  const modules = numberFact(attributes, 'modules') ?? 1;
  if (modules <= 1) return [];
  const slots = { value: dimmSlotsOf(machine).length, look: { at: 'board', attribute: 'dimm-slots' } } as const;
  return [ground('set-size', partSide(attributes, 'modules'), slots, atMost)];
}

/** Checked where the board says how much it takes; a board that says nothing about it refuses nothing. */
function mostMemory(attributes: Attributes, machine: MachineView): readonly Reason[] {
  const most = sideOf(machine, 'board', 'most-memory');
  if (most.value === undefined) return [];
  const others = partsOf(machine, 'dimm').map((part) => total(part.attributes));
  const own = total(attributes);
  const sum =
    own === undefined || others.includes(undefined)
      ? undefined
      : others.reduce<number>((all, each) => all + (each ?? 0), own);
  return [ground('most-memory', { value: sum, look: { at: 'part', attribute: 'capacity' } }, most, atMost)];
}

function total(attributes: Attributes): number | undefined {
  const each = numberFact(attributes, 'capacity');
  return each === undefined ? undefined : each * (numberFact(attributes, 'modules') ?? 1);
}

/** Speed never decides: everything runs at the slowest of board, processor and modules. */
function speed(attributes: Attributes, machine: MachineView): readonly Reason[] {
  const own = numberFact(attributes, 'memory-speed');
  const around = [...partsOf(machine, 'board', 'processor', 'dimm')].map((part) =>
    numberFact(part.attributes, 'memory-speed'),
  );
  const slowest = Math.min(...around.filter((each) => each !== undefined));
  if (own === undefined || !Number.isFinite(slowest)) return [];
  return [
    {
      fact: 'memory-speed',
      says: 'yes',
      source: 'recorded',
      part: own,
      place: slowest,
      look: [],
      figures: { 'runs-at': Math.min(own, slowest) },
    },
  ];
}

function slotOrder(attributes: Attributes, slot: Slot, machine: MachineView): readonly Reason[] {
  const count = partsOf(machine, 'dimm').length + (numberFact(attributes, 'modules') ?? 1);
  const order = dimmOrder(machine, count);
  if (!order || order.evidence === 'default') return [];
  const says = order.fill.includes(slot.id) ? 'yes' : 'unknown';
  return [
    {
      fact: 'slot-order',
      says,
      source: 'board-manual',
      part: slot.id,
      place: order.fill,
      look: says === 'yes' ? [] : [{ at: 'board', attribute: 'slot-order' }],
      figures: { modules: count },
    },
  ];
}
