import { type Contribution, type DriveReading, NO_DRIVE_FACTS } from '../reading.ts';
import { valueIn } from '../values.ts';
import { flagIn, isObject, listIn, numberIn, type ToolJson, textIn } from './json.ts';

/** A drive of which only the listing is known. */
export const listedDrive = (
  model: string | null,
  kind: string | null,
  serial: string | null,
  bytes: number | null,
): DriveReading => ({
  model,
  kind,
  health: null,
  powerOnHours: null,
  reallocated: null,
  pending: null,
  uncorrectable: null,
  percentageUsed: null,
  mediaErrors: null,
  serial,
  firmware: null,
  bytes,
  facts: NO_DRIVE_FACTS,
});

/** The disks that `lsblk --json` lists; partitions, loops and disc readers are none. */
export function readLsblk(root: ToolJson): Contribution {
  const drives: DriveReading[] = [];
  for (const device of listIn(root, 'blockdevices')) {
    if (drives.length >= MOST_DRIVES) break;
    if (isObject(device) && isDisk(device)) drives.push(drive(device));
  }
  return { tool: 'lsblk', drives, gaps: [] };
}

const isDisk = (device: ToolJson): boolean =>
  textIn(device, 'type') === 'disk' && !/^(?:zram|ram|loop|md|dm-)/.test(textIn(device, 'name') ?? '');

const drive = (device: ToolJson): DriveReading =>
  listedDrive(
    valueIn(textIn(device, 'model')),
    kindOf(device),
    valueIn(textIn(device, 'serial')),
    numberIn(device, 'size'),
  );

/** More than any desktop machine holds. */
export const MOST_DRIVES = 256;

const FLAGS: ReadonlyMap<string, boolean> = new Map([
  ['0', false],
  ['1', true],
]);

/** Older versions print yes and no as "1" and "0". */
function kindOf(device: ToolJson): string | null {
  if (textIn(device, 'tran') === 'nvme' || /^nvme/.test(textIn(device, 'name') ?? '')) return 'nvme';
  const turns = flagIn(device, 'rota') ?? FLAGS.get(textIn(device, 'rota') ?? '');
  return turns === undefined ? null : turns ? 'hdd' : 'ssd';
}
