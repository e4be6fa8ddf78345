import { memorySlots } from './dmidecode/memory.ts';
import { type DmiRecord, dmiRecords, leadingNumberOf, looksLikeDmi, said } from './dmidecode/records.ts';
import type { Gap, Said } from './said.ts';

const NOTHING: Said = {
  kinds: [],
  board: { vendor: null, name: null },
  system: { vendor: null, name: null },
  chassis: null,
  firmware: { vendor: null, version: null, date: null },
  processors: [],
  memory: { slots: [] },
  cards: [],
  drives: [],
  remarks: [],
  gaps: [],
};

/** What a machine says of itself, read from the text of a general-purpose system tool. What cannot be read is a gap, never a guess. */
export function readText(text: string): Said {
  if (text.trim() === '') return { ...NOTHING, gaps: [{ about: 'file', why: 'it is empty' }] };
  if (!looksLikeDmi(text))
    return { ...NOTHING, gaps: [{ about: 'file', why: 'it is not the text of a tool that is read here' }] };
  return readDmi(dmiRecords(text));
}

function readDmi(records: readonly DmiRecord[]): Said {
  const first = (type: number) => records.find((record) => record.type === type);
  const board = records.find((record) => record.type === 2 && record.fields.get('Type') === 'Motherboard') ?? first(2);
  const gaps: Gap[] = [];
  const value = (record: DmiRecord | undefined, field: string, about: string): string | null => {
    const found = said(record, field);
    if (found === null)
      gaps.push({
        about,
        why: record ? (record.fields.has(field) ? 'only a placeholder stands there' : 'not said') : 'no such record',
      });
    return found;
  };
  const memory = memorySlots(records);
  return {
    ...NOTHING,
    kinds: ['dmidecode'],
    board: { vendor: value(board, 'Manufacturer', 'board maker'), name: value(board, 'Product Name', 'board name') },
    system: {
      vendor: value(first(1), 'Manufacturer', 'system maker'),
      name: value(first(1), 'Product Name', 'system name'),
    },
    chassis: value(first(3), 'Type', 'chassis'),
    firmware: {
      vendor: value(first(0), 'Vendor', 'firmware maker'),
      version: value(first(0), 'Version', 'firmware version'),
      date: value(first(0), 'Release Date', 'firmware date'),
    },
    processors: processors(records, gaps),
    memory: { slots: memory.slots },
    gaps: [...gaps, ...memory.gaps],
  };
}

function processors(records: readonly DmiRecord[], gaps: Gap[]): Said['processors'] {
  const central = records.filter(
    (record) => record.type === 4 && (record.fields.get('Type') ?? 'Central Processor') === 'Central Processor',
  );
  const populated = central.filter((record) => !/^Unpopulated/.test(record.fields.get('Status') ?? ''));
  if (populated.length === 0) gaps.push({ about: 'processor', why: 'the report says nothing of it' });
  return populated.map((record) => ({
    name: said(record, 'Version'),
    socket: said(record, 'Socket Designation') ?? said(record, 'Upgrade'),
    cores: leadingNumberOf(said(record, 'Core Count')),
  }));
}
