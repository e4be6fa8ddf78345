import type { ReportGap } from '../../custody/machineReport.ts';
import { MOST_SLOTS, UNKNOWN_SLOT } from '../dmi/memorySlots.ts';
import { socketName } from '../dmi/socketName.ts';
import type { Card, Contribution, DriveReading, ModuleReading, Named, ProcessorReading } from '../reading.ts';
import { sizeInMiB, speedInMTs, valueIn, wholeNumber } from '../values.ts';
import type { ReadingWords } from '../words.ts';
import type { LshwNode } from './lshwNodes.ts';
import { listedDrive, MOST_DRIVES } from './readLsblk.ts';

/** What a hardware tree of `lshw` says. */
export function readLshw(nodes: readonly LshwNode[], words: ReadingWords): Contribution {
  const [machine] = nodes;
  const core = nodes.find(({ id }) => id === 'core');
  const firmware = nodes.find(({ id }) => id === 'firmware');
  const processors = nodes.filter(({ id, fields }) => /^cpu(?::|$)/.test(id) && isThere(fields)).map(processor);
  const slots = nodes.filter(isBank).slice(0, MOST_SLOTS).map(bank);
  const of = (node: LshwNode | undefined, field: string) => valueIn(node?.fields.get(field));
  const named = (node: LshwNode | undefined): Named => ({ vendor: of(node, 'vendor'), name: of(node, 'product') });
  const gaps: ReportGap[] = [
    ...slots.flatMap((slot, index) =>
      slot.filled === null
        ? [{ about: `memory.slots[${index}]`, why: words.gap['no-size'].replace('{slot}', '') }]
        : [],
    ),
    ...(core ? [] : [{ about: 'board', why: words.gap['no-record'] }]),
  ];
  return {
    tool: 'lshw',
    system: named(machine),
    board: named(core),
    ...(machine && { chassis: /chassis=(\S+)/.exec(machine.fields.get('configuration') ?? '')?.[1] ?? null }),
    ...(firmware && {
      firmware: { vendor: of(firmware, 'vendor'), version: of(firmware, 'version'), date: of(firmware, 'date') },
    }),
    processors,
    slots,
    cards: nodes.flatMap(card),
    drives: nodes.flatMap(drive).slice(0, MOST_DRIVES),
    gaps,
  };
}

const isThere = (fields: LshwNode['fields']): boolean =>
  valueIn(fields.get('product')) !== null && !/\[empty\]/i.test(fields.get('description') ?? '');

function processor({ fields }: LshwNode): ProcessorReading {
  const counts = fields.get('configuration') ?? '';
  return {
    name: valueIn(fields.get('product')),
    socket: socketName(fields.get('slot'), undefined),
    cores: wholeNumber(/\bcores=(\d+)/.exec(counts)?.[1]),
    threads: wholeNumber(/\bthreads=(\d+)/.exec(counts)?.[1]),
    maker: valueIn(fields.get('vendor')),
    serial: valueIn(fields.get('serial')),
  };
}

/** Banks of system memory; a firmware ROM and caches are memory too. */
const isBank = ({ id, above }: LshwNode): boolean =>
  /^bank(?::|$)/.test(id) &&
  (above === null || (/^memory(?::|$)/.test(above.id) && !/flash|video/i.test(above.fields.get('description') ?? '')));

const TYPE = /\b((?:LP)?DDR\d?(?: FB-DIMM)?|SDRAM|HBM\d?)\b/;
const FORM = /^(SO-?DIMM|DIMM|Row [Oo]f [Cc]hips|Chip|Die|FB-DIMM|RIMM|SIMM)\b/;
const FORM_NAMES: Readonly<Record<string, string>> = { 'ROW OF CHIPS': 'Row Of Chips', 'SO-DIMM': 'SODIMM' };

function bank({ fields }: LshwNode): ModuleReading {
  const description = fields.get('description') ?? '';
  const form = FORM.exec(description)?.[1];
  const size = fields.get('size');
  const sizeMiB = size === undefined ? null : /^\d+$/.test(size) ? Number(size) / 1048576 : sizeInMiB(size);
  const rated = speedInMTs(/(\d+ MHz)/.exec(description)?.[1]);
  const clock = clockInMHz(fields.get('clock'));
  return {
    ...UNKNOWN_SLOT,
    locator: valueIn(fields.get('slot')),
    sizeMiB,
    type: TYPE.exec(description)?.[1] ?? null,
    speedMTs: rated ?? clock,
    formFactor: form === undefined ? null : (FORM_NAMES[form.toUpperCase()] ?? form),
    filled: sizeMiB !== null ? true : /\[empty\]/i.test(description) ? false : null,
    maker: valueIn(fields.get('vendor')),
    partNumber: valueIn(fields.get('product')),
    serial: valueIn(fields.get('serial')),
  };
}

/** Stands in where no rated speed is named; what it means besides one is not said. The text prints `2105MHz (0.5ns)`, JSON the number of hertz. */
function clockInMHz(text: string | undefined): number | null {
  const read = /^(\d+)(MHz)?/.exec(text ?? '');
  if (!read) return null;
  return read[2] ? Number(read[1]) : Math.round(Number(read[1]) / 1e6) || null;
}

const CARD = /^(?:display|network|multimedia|sound|raid|sata|scsi|ide|firewire)(?::|$)/;

function card({ id, fields }: LshwNode): readonly Card[] {
  const [vendor, product] = [valueIn(fields.get('vendor')), valueIn(fields.get('product'))];
  if (!CARD.test(id) || product === null || fields.get('bus info')?.startsWith('usb')) return [];
  const name = vendor === null || product.startsWith(vendor) ? product : `${vendor} ${product}`;
  return [{ kind: valueIn(fields.get('description')) ?? id, name }];
}

function drive({ id, fields }: LshwNode): readonly DriveReading[] {
  const isNvme = /^nvme(?::|$)/.test(id);
  const capabilities = fields.get('capabilities') ?? '';
  if (!(isNvme || /^disk(?::|$)/.test(id)) || /\bremovable\b/.test(capabilities)) return [];
  const model = valueIn(fields.get('product'));
  if (model === null) return [];
  const kind = isNvme ? 'nvme' : /\b\d+rpm\b/.test(capabilities) ? 'hdd' : null;
  return [listedDrive(model, kind, valueIn(fields.get('serial')), null)];
}
