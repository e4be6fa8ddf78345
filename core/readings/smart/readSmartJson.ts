import { say } from '../../text/say.ts';
import { type Contribution, type DriveReading, NO_DRIVE_FACTS } from '../reading.ts';
import { flagIn, isObject, listIn, numberIn, objectIn, type ToolJson, textIn } from '../tools/json.ts';
import { valueIn } from '../values.ts';
import type { ReadingWords } from '../words.ts';
import { healthOf, type SmartAttribute } from './attributes.ts';
import { gapsInReport } from './readSmartText.ts';

/** Is it what `smartctl --json` prints? */
export const isSmartJson = (value: ToolJson): boolean =>
  isObject(value.smartctl) || (isObject(value.device) && ('smart_status' in value || 'model_name' in value));

/** What `smartctl --json` prints of one drive. */
export function readSmartJson(root: ToolJson, words: ReadingWords): Contribution {
  const log = objectIn(root, 'nvme_smart_health_information_log');
  const attributes = listIn(objectIn(root, 'ata_smart_attributes'), 'table').filter(isObject).map(attribute);
  const ata = healthOf(attributes);
  const temperature = objectIn(root, 'temperature');
  const passed = flagIn(objectIn(root, 'smart_status'), 'passed');
  const run = objectIn(root, 'smartctl');
  const drive: DriveReading = {
    model: valueIn(textIn(root, 'model_name') ?? textIn(root, 'scsi_model_name') ?? textIn(root, 'scsi_product')),
    kind: kindOf(root),
    health: passed === null ? null : passed ? 'passed' : 'failed',
    powerOnHours:
      whole(numberIn(objectIn(root, 'power_on_time'), 'hours')) ?? numberIn(log, 'power_on_hours') ?? ata.powerOnHours,
    reallocated: ata.reallocated,
    pending: ata.pending,
    uncorrectable: ata.uncorrectable,
    percentageUsed: numberIn(log, 'percentage_used') ?? numberIn(root, 'scsi_percentage_used_endurance_indicator'),
    mediaErrors: numberIn(log, 'media_errors'),
    serial: valueIn(textIn(root, 'serial_number')),
    firmware: valueIn(textIn(root, 'firmware_version') ?? textIn(root, 'scsi_revision')),
    bytes: numberIn(objectIn(root, 'user_capacity'), 'bytes') ?? numberIn(root, 'nvme_total_capacity'),
    facts: {
      ...NO_DRIVE_FACTS,
      ...ata.facts,
      criticalWarning: numberIn(log, 'critical_warning'),
      spare: numberIn(log, 'available_spare'),
      spareThreshold: numberIn(log, 'available_spare_threshold'),
      unsafeShutdowns: numberIn(log, 'unsafe_shutdowns'),
      powerCycles: numberIn(root, 'power_cycle_count') ?? numberIn(log, 'power_cycles') ?? ata.facts.powerCycles,
      celsius: numberIn(temperature, 'current') ?? ata.facts.celsius,
      warningCelsius: numberIn(temperature, 'op_limit_max'),
      criticalCelsius: numberIn(temperature, 'drive_trip') ?? numberIn(temperature, 'limit_max'),
      exitStatus: numberIn(run, 'exit_status'),
    },
  };
  if (drive.model === null && drive.health === null && attributes.length === 0) {
    const said = listIn(run, 'messages').filter(isObject);
    const failure = said.map((message) => textIn(message, 'string')).find((text) => text !== undefined);
    const why = failure ? say(words.gap.complaint, { text: failure }) : words.gap['no-drive'];
    return { tool: 'smartctl', drives: [], gaps: [{ about: 'drives', why }] };
  }
  return { tool: 'smartctl', drives: [drive], gaps: gapsInReport(drive, words) };
}

const whole = (value: number | null): number | null => (value === null ? null : Math.floor(value));

function attribute(row: ToolJson): SmartAttribute {
  const raw = objectIn(row, 'raw');
  const failed = textIn(row, 'when_failed') ?? '';
  return {
    id: numberIn(row, 'id') ?? -1,
    name: textIn(row, 'name') ?? '',
    raw: textIn(raw, 'string') ?? textIn(raw, 'value') ?? '',
    failed: /now/i.test(failed) ? 'now' : /past/i.test(failed) ? 'before' : null,
  };
}

/** A rotation rate of 0 stands for a drive that does not turn. */
function kindOf(root: ToolJson): string | null {
  const protocol = textIn(objectIn(root, 'device'), 'protocol') ?? '';
  if (/nvme/i.test(protocol) || 'nvme_smart_health_information_log' in root) return 'nvme';
  const rate = numberIn(root, 'rotation_rate');
  return rate === null ? null : rate === 0 ? 'ssd' : 'hdd';
}
