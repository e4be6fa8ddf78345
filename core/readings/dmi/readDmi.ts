import type { ReportGap, SaidCardSlot } from '../../custody/machineReport.ts';
import { say } from '../../text/say.ts';
import type { Contribution, ModuleReading, Named, ProcessorReading } from '../reading.ts';
import { squeezed, valueIn } from '../values.ts';
import type { ReadingWords } from '../words.ts';
import { type DmiRecord, type DmiTable, dmiRecords } from './dmiRecords.ts';
import { dmiMemorySlots, UNKNOWN_SLOT } from './memorySlots.ts';
import { dmiProcessors } from './processors.ts';

/** What an SMBIOS table says as `dmidecode` prints it, whole or in part. What the firmware says is told, not seen. */
export function readDmi(text: string, words: ReadingWords): Contribution {
  const table = dmiRecords(text);
  const { records } = table;
  const gaps = new Gaps(words);
  const board = pickBoard(records);
  const processors = dmiProcessors(records);
  const slots = dmiMemorySlots(records);
  const partial = !records.some(({ type }) => type === 0);
  const speaksOf = (type: number) => !partial || records.some((record) => record.type === type);
  for (const line of table.complaints) gaps.add('table', 'complaint', { text: line });
  if (table.cut) gaps.add('table', 'cut');
  const contribution = {
    tool: 'dmidecode',
    ...(speaksOf(2) && { board: gaps.named('board', board, 'Manufacturer', 'Product Name') }),
    ...(speaksOf(1) && { system: gaps.named('system', first(records, 1), 'Manufacturer', 'Product Name') }),
    ...(speaksOf(3) && { chassis: gaps.text('chassis', first(records, 3), 'Type') }),
    ...(speaksOf(0) && {
      firmware: {
        vendor: gaps.text('firmware.vendor', first(records, 0), 'Vendor'),
        version: gaps.text('firmware.version', first(records, 0), 'Version'),
        date: gaps.text('firmware.date', first(records, 0), 'Release Date'),
      },
    }),
    ...(speaksOf(4) && { processors }),
    ...((speaksOf(17) || speaksOf(16)) && { slots }),
    cardSlots: cardSlots(records),
    serials: serials(records, board),
  } as const;
  if (contribution.processors) gaps.processors(processors);
  if (contribution.slots) gaps.slots(slots, table);
  return { ...contribution, gaps: gaps.all };
}

const first = (records: readonly DmiRecord[], type: number) => records.find((record) => record.type === type);

/** The first base board of type Motherboard (DSP0134 7.3.2), else the first. */
const pickBoard = (records: readonly DmiRecord[]): DmiRecord | undefined =>
  records.find(({ type, fields }) => type === 2 && squeezed(fields.get('Type') ?? '') === 'Motherboard') ??
  first(records, 2);

function cardSlots(records: readonly DmiRecord[]): readonly SaidCardSlot[] {
  return records.flatMap(({ type, fields }) => {
    const designation = type === 9 ? valueIn(fields.get('Designation')) : null;
    if (designation === null) return [];
    const usage = squeezed(fields.get('Current Usage') ?? '');
    return {
      designation,
      type: valueIn(fields.get('Type')) ?? '',
      usage: usage === 'In Use' ? 'in-use' : usage === 'Available' ? 'available' : 'unknown',
    } as const;
  });
}

function serials(records: readonly DmiRecord[], board: DmiRecord | undefined): Contribution['serials'] & object {
  const of = { system: first(records, 1), board, chassis: first(records, 3) };
  return Object.fromEntries(
    Object.entries(of).flatMap(([name, record]) => {
      const serial = valueIn(record?.fields.get('Serial Number'));
      return serial === null ? [] : [[name, serial]];
    }),
  );
}

class Gaps {
  readonly all: ReportGap[] = [];
  readonly #words: ReadingWords;

  constructor(words: ReadingWords) {
    this.#words = words;
  }

  add(about: string, why: keyof ReadingWords['gap'], fills: Readonly<Record<string, string>> = {}): void {
    this.all.push({ about, why: say(this.#words.gap[why], fills) });
  }

  text(about: string, record: DmiRecord | undefined, field: string): string | null {
    const text = record?.fields.get(field);
    const value = valueIn(text);
    if (record === undefined) this.add(about, 'no-record');
    else if (text === undefined) this.add(about, record.cut ? 'cut-in-record' : 'no-line');
    else if (value === null) this.add(about, 'placeholder', { text: squeezed(text) });
    return value;
  }

  named(about: string, record: DmiRecord | undefined, vendor: string, name: string): Named {
    return { vendor: this.text(`${about}.vendor`, record, vendor), name: this.text(`${about}.name`, record, name) };
  }

  processors(processors: readonly ProcessorReading[]): void {
    if (processors.length === 0) this.add('processors', 'no-record');
    processors.forEach((processor, index) => {
      for (const field of ['name', 'socket', 'cores'] as const)
        if (processor[field] === null) this.add(`processors[${index}].${field}`, 'no-line');
    });
  }

  slots(slots: readonly ModuleReading[], { cut }: DmiTable): void {
    if (slots.length === 0) this.add('memory.slots', 'no-record');
    slots.forEach((slot, index) => {
      const about = `memory.slots[${index}]`;
      if (slot.filled === null) this.#openSlot(about, slot, cut);
      if (!slot.filled) return;
      for (const field of ['type', 'speedMTs', 'formFactor'] as const)
        if (slot[field] === null) this.add(`${about}.${field}`, 'no-line');
    });
  }

  #openSlot(about: string, slot: ModuleReading, cut: boolean): void {
    const called = slot.locator ?? slot.bank;
    if (slot === UNKNOWN_SLOT) this.add(about, cut ? 'cut-before' : 'declared-only');
    else this.add(about, 'no-size', { slot: called === null ? '' : ` (${called})` });
  }
}
