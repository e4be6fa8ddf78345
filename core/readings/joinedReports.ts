import type { ReportGap } from '../custody/machineReport.ts';
import type { Contribution, DriveReading, MachineReading, ProcessorReading, Tool } from './reading.ts';
import { TOOLS } from './reading.ts';

/** Puts together what several tools say of one machine. Where two speak of the same thing, the one nearer to it counts. */
export function joinedReports(all: readonly Contribution[]): MachineReading {
  const byNearness = all.toSorted((a, b) => TOOLS.indexOf(a.tool) - TOOLS.indexOf(b.tool));
  const each = <Value>(pick: (of: Contribution) => Value | null | undefined): Value | null =>
    byNearness.map(pick).find((value) => value != null) ?? null;
  const lists = <Value>(pick: (of: Contribution) => readonly Value[] | undefined): readonly Value[] =>
    byNearness.map(pick).find((list) => list !== undefined && list.length > 0) ?? [];
  const told = {
    board: { vendor: each(({ board }) => board?.vendor), name: each(({ board }) => board?.name) },
    system: { vendor: each(({ system }) => system?.vendor), name: each(({ system }) => system?.name) },
    chassis: each(({ chassis }) => chassis),
    firmware: {
      vendor: each(({ firmware }) => firmware?.vendor),
      version: each(({ firmware }) => firmware?.version),
      date: each(({ firmware }) => firmware?.date),
    },
    processors: processorsOf(byNearness.flatMap(({ processors }) => (processors?.length ? [processors] : []))),
    slots: lists(({ slots }) => slots),
  };
  const { drives, gaps } = drivesOf(all);
  return {
    tools: [...new Set(all.map(({ tool }): Tool => tool))],
    ...told,
    cardSlots: all.flatMap(({ cardSlots }) => cardSlots ?? []),
    cards: byNearness.toReversed().find(({ cards }) => cards?.length)?.cards ?? [],
    drives,
    temperatures: all.flatMap(({ temperatures }) => temperatures ?? []),
    serials: Object.assign({}, ...byNearness.toReversed().map(({ serials }) => serials ?? {})),
    gaps: gaps.filter(({ about }) => !isFilled(told, about)),
  };
}

/** The first list counts; what it leaves open is taken from the others where they list as many. */
function processorsOf(lists: readonly (readonly ProcessorReading[])[]): readonly ProcessorReading[] {
  const [first, ...others] = lists;
  const same = others.filter((other) => other.length === first?.length);
  return (first ?? []).map((processor, index) => {
    const from = (field: 'name' | 'cores' | 'threads') => same.find((other) => other[index]?.[field] != null)?.[index];
    return {
      ...processor,
      name: processor.name ?? from('name')?.name ?? null,
      cores: processor.cores ?? from('cores')?.cores ?? null,
      threads: processor.threads ?? from('threads')?.threads ?? null,
    };
  });
}

type Told = Pick<MachineReading, 'board' | 'system' | 'chassis' | 'firmware' | 'processors' | 'slots'>;

/** Whether another tool has said what one left open. */
function isFilled(told: Told, about: string): boolean {
  const processor = /^processors\[(\d+)\]\.(name|cores)$/.exec(about);
  if (processor) return told.processors[Number(processor[1])]?.[processor[2] === 'name' ? 'name' : 'cores'] != null;
  switch (about) {
    case 'board.vendor':
      return told.board.vendor !== null;
    case 'board.name':
      return told.board.name !== null;
    case 'system.vendor':
      return told.system.vendor !== null;
    case 'system.name':
      return told.system.name !== null;
    case 'chassis':
      return told.chassis !== null;
    case 'firmware.vendor':
      return told.firmware.vendor !== null;
    case 'firmware.version':
      return told.firmware.version !== null;
    case 'firmware.date':
      return told.firmware.date !== null;
    case 'processors':
      return told.processors.length > 0;
    case 'memory.slots':
      return told.slots.length > 0;
    default:
      return false;
  }
}

/** Drives whose health was read, then those that are only listed and are none of these. */
function drivesOf(all: readonly Contribution[]): { drives: readonly DriveReading[]; gaps: readonly ReportGap[] } {
  const drives: DriveReading[] = [];
  const gaps: ReportGap[] = [];
  for (const one of all.filter(({ tool }) => tool === 'smartctl')) {
    const at = drives.length;
    drives.push(...(one.drives ?? []));
    gaps.push(...one.gaps.map((gap) => ({ ...gap, about: gap.about.replace(/^drive\./, `drives[${at}].`) })));
  }
  const rest = all.filter(({ tool }) => tool !== 'smartctl');
  for (const listed of rest.flatMap((one) => one.drives ?? [])) {
    const known = drives.findIndex((drive) => isSame(drive, listed));
    const drive = drives[known];
    if (!drive) drives.push(listed);
    else drives[known] = { ...drive, kind: drive.kind ?? listed.kind, serial: drive.serial ?? listed.serial };
  }
  return {
    drives,
    gaps: [...gaps.filter((gap) => !isKindKnown(gap, drives)), ...rest.flatMap((one) => one.gaps)],
  };
}

const isKindKnown = ({ about }: ReportGap, drives: readonly DriveReading[]): boolean => {
  const index = /^drives\[(\d+)\]\.kind$/.exec(about)?.[1];
  return index !== undefined && drives[Number(index)]?.kind != null;
};

/** The same drive by its serial number; where one of the two does not say it, by its model. */
const isSame = (a: DriveReading, b: DriveReading): boolean =>
  a.serial !== null && b.serial !== null ? a.serial === b.serial : a.model !== null && a.model === b.model;
