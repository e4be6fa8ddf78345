import type { Attributes, ThingKind } from '../custody/part.ts';
import type { Slot } from '../custody/slot.ts';
import { dimmSlotsFromReport } from '../fit/dimmLabels.ts';
import { dmiRecords, said } from './dmidecode/records.ts';
import type { Said, SaidCardSlot } from './said.ts';

/** A part that the report names, in the slot it names. */
export type ReportedPart = {
  readonly slot: string;
  readonly kind: ThingKind;
  readonly name: string;
  readonly attributes: Attributes;
  readonly serial: null;
  readonly source: 'own-report';
};
export type SlotsAndParts = {
  readonly slots: readonly Slot[];
  readonly parts: readonly ReportedPart[];
  readonly gaps: readonly string[];
};

/** The card slots that a report names, in its order. */
export function cardSlotsOf(text: string): readonly SaidCardSlot[] {
  return dmiRecords(text)
    .filter((record) => record.type === 9)
    .map((record, at) => ({
      designation: said(record, 'Designation') ?? `card slot ${at + 1}`,
      type: said(record, 'Type') ?? '',
      usage:
        ({ 'In Use': 'in-use', Available: 'available' } as const)[record.fields.get('Current Usage') ?? ''] ??
        'unknown',
    }));
}

/** The slots a machine's own report speaks of and the parts it names in them. What it does not name is not there, but a gap. */
export function slotsAndPartsFrom(report: Said, cardSlots: readonly SaidCardSlot[]): SlotsAndParts {
  const slots: Slot[] = [];
  const parts: ReportedPart[] = [];
  const add = (slot: Slot, name: string | null, attributes: Attributes = {}) => {
    slots.push(slot);
    if (name !== null)
      parts.push({ slot: slot.id, kind: slot.takes, name, attributes, serial: null, source: 'own-report' });
  };
  const board = [report.board.vendor, report.board.name].filter((one) => one !== null).join(' ');
  add(
    { id: 'board', takes: 'board', order: 1, source: 'own-report' },
    board === '' ? null : board,
    report.firmware.version === null ? {} : { firmware: report.firmware.version },
  );
  report.processors.forEach((processor, at) => {
    const id = at === 0 ? 'socket' : `socket ${at + 1}`;
    add({ id, takes: 'processor', order: at + 1, source: 'own-report' }, processor.name, {
      ...(processor.socket !== null && { socket: processor.socket }),
      ...(processor.cores !== null && { cores: processor.cores }),
    });
  });
  const records = report.memory.slots.map((slot) => ({
    locator: slot.locator,
    bank: slot.bank,
    filled: slot.sizeMiB !== null,
    type: slot.type,
  }));
  const dimms = dimmSlotsFromReport(records);
  const ids = new Set<string>();
  dimms.slots.forEach((slot, at) => {
    const id = free(slot.id, ids);
    const module = report.memory.slots[at];
    const filled = module && module.sizeMiB !== null;
    add(
      { ...slot, id },
      filled ? moduleName(module.sizeMiB, module.type) : null,
      filled
        ? {
            capacity: (module.sizeMiB ?? 0) / 1024,
            ...(module.type !== null && { memory: module.type }),
            ...(module.speedMTs !== null && { 'memory-speed': module.speedMTs }),
          }
        : {},
    );
  });
  cardSlots.forEach((slot, at) => {
    const graphics = /x16/i.test(slot.type) && !slots.some((one) => one.takes === 'card');
    slots.push({
      id: free(slot.designation, ids),
      takes: graphics ? 'card' : 'add-in',
      order: at + 1,
      source: 'own-report',
      attributes: { type: slot.type, usage: slot.usage },
    });
  });
  return { slots, parts, gaps: [...dimms.gaps, ...report.gaps.map((gap) => gap.about)] };
}

const moduleName = (sizeMiB: number | null, type: string | null): string =>
  [`${(sizeMiB ?? 0) / 1024} GiB`, type, 'module'].filter((one) => one !== null).join(' ');

/** A name that no slot has yet. */
function free(name: string, taken: Set<string>): string {
  let id = name.slice(0, 70);
  for (let n = 2; taken.has(id); n += 1) id = `${name.slice(0, 66)} ${n}`;
  taken.add(id);
  return id;
}
