import type { ModuleReading } from '../reading.ts';
import { sizeInMiB, speedInMTs, squeezed, valueIn, wholeNumber } from '../values.ts';
import type { DmiRecord } from './dmiRecords.ts';

export const UNKNOWN_SLOT: ModuleReading = {
  locator: null,
  bank: null,
  sizeMiB: null,
  type: null,
  speedMTs: null,
  configuredMTs: null,
  formFactor: null,
  filled: null,
  maker: null,
  partNumber: null,
  serial: null,
  volts: null,
  checked: null,
  buffering: null,
};

/**
 * All slots for system memory that the machine has: the larger of what its arrays declare (DSP0134 7.17) and the
 * records that belong to one (7.18). A declared slot without a record is a slot of which nothing is known.
 */
export function dmiMemorySlots(records: readonly DmiRecord[]): readonly ModuleReading[] {
  const arrays = records.filter((record) => record.type === 16);
  const foreign = new Set(arrays.filter((array) => !isSystemMemory(array)).map(({ handle }) => handle));
  const slots = records
    .filter((record) => record.type === 17 && !foreign.has(arrayOf(record)))
    .slice(0, MOST_SLOTS)
    .map(slot);
  const declared = arrays
    .filter(isSystemMemory)
    .reduce((sum, { fields }) => sum + Math.min(wholeNumber(fields.get('Number Of Devices')) ?? 0, MOST_SLOTS), 0);
  const missing = Math.max(0, Math.min(declared, MOST_SLOTS) - slots.length);
  return [...slots, ...Array.from({ length: missing }, () => UNKNOWN_SLOT)];
}

/** No board has more; a larger count is a broken table. */
export const MOST_SLOTS = 128;

function isSystemMemory({ fields }: DmiRecord): boolean {
  const use = valueIn(fields.get('Use'));
  return use === null || use === 'System Memory';
}

const arrayOf = ({ fields }: DmiRecord): string | null =>
  /0x([0-9A-Fa-f]+)/.exec(fields.get('Array Handle') ?? '')?.[1] ?? null;

const EMPTY = /^\s*(?:No Module Installed|Not Installed)/i;

function slot({ fields }: DmiRecord): ModuleReading {
  const size = fields.get('Size');
  const sizeMiB = sizeInMiB(size);
  const volts = /^\s*(\d+(?:\.\d+)?) V\b/.exec(fields.get('Configured Voltage') ?? '')?.[1];
  const [total, data] = [wholeNumber(fields.get('Total Width')), wholeNumber(fields.get('Data Width'))];
  return {
    locator: valueIn(fields.get('Locator')),
    bank: valueIn(fields.get('Bank Locator')),
    sizeMiB,
    type: kindOf(fields.get('Type')),
    speedMTs: speedInMTs(fields.get('Speed')),
    configuredMTs: speedInMTs(fields.get('Configured Memory Speed') ?? fields.get('Configured Clock Speed')),
    formFactor: kindOf(fields.get('Form Factor')),
    filled: sizeMiB !== null ? sizeMiB > 0 : size !== undefined && EMPTY.test(size) ? false : null,
    maker: valueIn(fields.get('Manufacturer')),
    partNumber: valueIn(fields.get('Part Number')),
    serial: valueIn(fields.get('Serial Number')),
    volts: volts === undefined ? null : Number(volts),
    checked: total === null || data === null || data === 0 ? null : total > data,
    buffering: buffering(fields.get('Type Detail')),
  };
}

/** "Other" says that the standard's list has no word for it, so nothing is known. */
function kindOf(text: string | undefined): string | null {
  const value = valueIn(text);
  return value === null || squeezed(value) === 'Other' ? null : value;
}

function buffering(detail: string | undefined): ModuleReading['buffering'] {
  if (/\bUnbuffered\b/.test(detail ?? '')) return 'unbuffered';
  return /\bRegistered \(/.test(detail ?? '') ? 'registered' : null;
}
