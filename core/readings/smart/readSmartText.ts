import type { ReportGap } from '../../custody/machineReport.ts';
import { say } from '../../text/say.ts';
import { type Contribution, type DriveReading, NO_DRIVE_FACTS } from '../reading.ts';
import { squeezed, valueIn, wholeNumber } from '../values.ts';
import type { ReadingWords } from '../words.ts';
import { attributeRow, healthOf, rowId, type SmartAttribute } from './attributes.ts';

/** What `smartctl` prints of one drive: ATA, NVMe or SCSI. */
export function readSmartText(text: string, words: ReadingWords): Contribution {
  const { fields, attributes, failure } = linesOf(text);
  const vendor = valueIn(fields.get('Vendor'));
  const product = valueIn(fields.get('Product'));
  const model =
    valueIn(fields.get('Device Model')) ??
    valueIn(fields.get('Model Number')) ??
    (product === null ? null : [vendor, product].filter((name) => name !== null).join(' '));
  const health = healthIn(fields);
  if (model === null && health === null && attributes.length === 0) {
    const why = failure ? say(words.gap.complaint, { text: failure }) : words.gap['no-drive'];
    return { tool: 'smartctl', drives: [], gaps: [{ about: 'drives', why }] };
  }
  const ata = healthOf(attributes);
  const number = (...names: readonly string[]) =>
    names.map((name) => wholeNumber(fields.get(name))).find((value) => value !== null) ?? null;
  const critical = /0x([0-9a-f]{1,2})/i.exec(fields.get('Critical Warning') ?? '')?.[1];
  const limits = /\/\s*(\d+)/;
  const upTo = (name: string): number | null => wholeNumber(limits.exec(fields.get(name) ?? '')?.[1]);
  const drive: DriveReading = {
    model,
    kind: kindIn(fields),
    health,
    powerOnHours: number('Power On Hours', 'number of hours powered up') ?? scsiHours(fields) ?? ata.powerOnHours,
    reallocated: ata.reallocated,
    pending: ata.pending,
    uncorrectable: ata.uncorrectable,
    percentageUsed: number('Percentage Used', 'Percentage used endurance indicator'),
    mediaErrors: number('Media and Data Integrity Errors'),
    serial: valueIn(fields.get('Serial Number') ?? fields.get('Serial number')),
    firmware: valueIn(fields.get('Firmware Version') ?? fields.get('Revision')),
    bytes: number('User Capacity', 'Namespace 1 Size/Capacity', 'Total NVM Capacity'),
    facts: {
      ...NO_DRIVE_FACTS,
      ...ata.facts,
      celsius: ata.facts.celsius ?? number('Temperature', 'Current Temperature', 'Current Drive Temperature'),
      criticalWarning: critical === undefined ? null : Number.parseInt(critical, 16),
      spare: number('Available Spare'),
      spareThreshold: number('Available Spare Threshold'),
      unsafeShutdowns: number('Unsafe Shutdowns'),
      powerCycles: number('Power Cycles') ?? ata.facts.powerCycles,
      warningCelsius: number('Warning Comp. Temp. Threshold') ?? upTo('Min/Max recommended Temperature'),
      criticalCelsius:
        number('Critical Comp. Temp. Threshold', 'Drive Trip Temperature') ?? upTo('Min/Max Temperature Limit'),
    },
  };
  return { tool: 'smartctl', drives: [drive], gaps: gapsInReport(drive, words) };
}

/** What a drive ought to say and does not. Which drive it is among several is settled where they are joined. */
export function gapsInReport(drive: DriveReading, words: ReadingWords): readonly ReportGap[] {
  const missing = (['model', 'kind', 'health', 'powerOnHours'] as const).filter((name) => drive[name] === null);
  return missing.map((name) => ({ about: `drive.${name}`, why: words.gap['no-line'] }));
}

function linesOf(text: string) {
  const fields = new Map<string, string>();
  const attributes: SmartAttribute[] = [];
  const ids = new Set<number>();
  let table = false;
  let failure: string | null = null;
  for (let at = 0; at < text.length; ) {
    const found = text.indexOf('\n', at);
    const end = found < 0 ? text.length : found;
    const line = text.slice(at, Math.min(end, at + LONGEST_LINE));
    at = end + 1;
    if (table) {
      // A drive has one row of each number; the first counts.
      if (ids.has(rowId(line))) continue;
      const row = attributeRow(line);
      if (row) {
        attributes.push(row);
        ids.add(row.id);
      } else if (line.trim() === '' || !/^\s*\d/.test(line)) table = false;
      if (table) continue;
    }
    if (line.startsWith('ID# ATTRIBUTE_NAME')) table = true;
    else if (/(?:open device|failed:|mandatory SMART command failed)/.test(line)) failure ??= squeezed(line);
    else addField(fields, line);
  }
  return { fields, attributes, failure };
}

/** No line that is read is longer; a longer one is no line of this tool. */
const LONGEST_LINE = 500;

function addField(fields: Map<string, string>, line: string): void {
  const scsi =
    /^\s*(number of hours powered up) = (.*)$/.exec(line) ?? /^\s*(Accumulated power on time), (.*)$/.exec(line);
  const colon = line.indexOf(':');
  if (!scsi && (colon < 2 || colon > 60)) return;
  const name = scsi ? (scsi[1] ?? '') : squeezed(line.slice(0, colon));
  if (!fields.has(name)) fields.set(name, scsi ? (scsi[2] ?? '') : line.slice(colon + 1));
}

type Fields = ReadonlyMap<string, string>;

const scsiHours = (fields: Fields): number | null =>
  wholeNumber(/(\d+):\d+/.exec(fields.get('Accumulated power on time') ?? '')?.[1]);

function healthIn(fields: Fields): DriveReading['health'] {
  const ata = fields.get('SMART overall-health self-assessment test result');
  const scsi = fields.get('SMART Health Status');
  if (/^\s*PASSED\b/.test(ata ?? '') || /^\s*OK\b/.test(scsi ?? '')) return 'passed';
  return /^\s*FAILED\b/.test(ata ?? '') || /IMPENDING FAILURE|EXCEEDED|FAIL/i.test(scsi ?? '') ? 'failed' : null;
}

function kindIn(fields: Fields): string | null {
  if (fields.has('Critical Warning') || fields.has('NVMe Version') || fields.has('Number of Namespaces')) return 'nvme';
  const rate = fields.get('Rotation Rate') ?? '';
  return /Solid State/i.test(rate) ? 'ssd' : /^\s*\d+ rpm/i.test(rate) ? 'hdd' : null;
}
