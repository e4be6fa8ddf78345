import type { Gap, SaidMemorySlot } from '../said.ts';
import { type DmiRecord, leadingNumberOf, said } from './records.ts';

const NO_SLOT: SaidMemorySlot = {
  locator: null,
  bank: null,
  sizeMiB: null,
  type: null,
  speedMTs: null,
  configuredMTs: null,
  formFactor: null,
};

/** Memory slots: all that the system-memory arrays declare, or all their records when these are more. An empty slot has no size. */
export function memorySlots(records: readonly DmiRecord[]): {
  readonly slots: readonly SaidMemorySlot[];
  readonly gaps: readonly Gap[];
} {
  const arrays = records.filter(
    (record) => record.type === 16 && (record.fields.get('Use') ?? 'System Memory') === 'System Memory',
  );
  const ofSystem = new Set(arrays.map((array) => array.handle));
  const devices = records.filter(
    (record) =>
      record.type === 17 &&
      (ofSystem.size === 0 ||
        !record.fields.has('Array Handle') ||
        ofSystem.has((record.fields.get('Array Handle') ?? '').toLowerCase())),
  );
  const gaps: Gap[] = [];
  const slots = devices.map((device, at) => {
    const name = said(device, 'Locator') ?? `memory slot ${at + 1}`;
    if (!device.fields.has('Size')) gaps.push({ about: name, why: 'the report ends before its size' });
    return slotOf(device);
  });
  const declared = arrays.reduce((sum, array) => sum + (Number(said(array, 'Number Of Devices')) || 0), 0);
  while (slots.length < declared) {
    slots.push(NO_SLOT);
    gaps.push({ about: `memory slot ${slots.length}`, why: 'declared, but without a record of its own' });
  }
  if (slots.length === 0) gaps.push({ about: 'memory slots', why: 'the report says nothing of them' });
  return { slots, gaps };
}

const slotOf = (device: DmiRecord): SaidMemorySlot => ({
  locator: said(device, 'Locator'),
  bank: said(device, 'Bank Locator'),
  sizeMiB: sizeMiB(device.fields.get('Size')),
  type: said(device, 'Type'),
  speedMTs: leadingNumberOf(said(device, 'Speed')),
  configuredMTs: leadingNumberOf(said(device, 'Configured Memory Speed') ?? said(device, 'Configured Clock Speed')),
  formFactor: said(device, 'Form Factor'),
});

const UNITS: Readonly<Record<string, number>> = {
  kb: 1 / 1024,
  kib: 1 / 1024,
  mb: 1,
  mib: 1,
  gb: 1024,
  gib: 1024,
  tb: 1024 * 1024,
  tib: 1024 * 1024,
};

/** `8 GB`, `4096 MB` in MiB; null for an empty slot and for what is not a size. */
function sizeMiB(text: string | undefined): number | null {
  const found = /^(\d+) ?([KMGT]i?B)$/i.exec(text ?? '');
  return found ? Number(found[1]) * (UNITS[(found[2] ?? '').toLowerCase()] ?? 0) : null;
}
