import { expect, it } from 'vitest';
import { readMachineReport } from '../../core/readings/readMachineReport.ts';
import { saidOf } from '../../core/readings/readText.ts';

/*
 * Forms of which the open data has no sample. What the tools print is written from memory of their manual pages
 * (util-linux lsblk(8), lm-sensors sensors(1), smartmontools smartctl(8), pciutils lspci(8), dmidecode(8)).
 */

const said = (text: string) => saidOf(readMachineReport(text));

it('lsblk: disks with their kind, no partitions, loops or trays', () => {
  const { kinds, drives } = said(
    JSON.stringify({
      blockdevices: [
        { name: 'loop0', type: 'loop', rota: false, model: null, tran: null },
        {
          name: 'sda',
          type: 'disk',
          rota: true,
          model: 'Plain Disk 1',
          tran: 'sata',
          children: [{ name: 'sda1', type: 'part', rota: true, model: null }],
        },
        { name: 'sdb', type: 'disk', rota: '0', model: 'Flat Drive 2  ', tran: 'sata' },
        { name: 'sr0', type: 'rom', rota: true, model: 'Disc Tray', tran: 'sata' },
        { name: 'nvme0n1', type: 'disk', rota: false, model: 'Stick Drive 3', tran: 'nvme' },
      ],
    }),
  );
  expect(kinds).toEqual(['lsblk']);
  expect(drives.map(({ model, kind }) => [model, kind])).toEqual([
    ['Plain Disk 1', 'hdd'],
    ['Flat Drive 2', 'ssd'],
    ['Stick Drive 3', 'nvme'],
  ]);
  expect(drives.map(({ health, powerOnHours }) => [health, powerOnHours])).toEqual([
    [null, null],
    [null, null],
    [null, null],
  ]);
});

it('sensors: temperatures with the limits of their own chip, no fans and no voltages', () => {
  const { tools, temperatures } = readMachineReport(
    JSON.stringify({
      'coretemp-isa-0000': {
        Adapter: 'ISA adapter',
        'Package id 0': { temp1_input: 47.0, temp1_max: 86.0, temp1_crit: 100.0, temp1_crit_alarm: 0.0 },
      },
      'nct6775-isa-0290': { Adapter: 'ISA adapter', fan1: { fan1_input: 812.0 }, in0: { in0_input: 0.912 } },
    }),
  );
  expect(tools).toEqual(['sensors']);
  expect(temperatures).toEqual([
    expect.objectContaining({ label: 'Package id 0', celsius: 47, high: 86, critical: 100 }),
  ]);
});

it('smartctl of a SCSI drive: OK is passed, grown defects are no attribute 5, full hours', () => {
  const { drives } = said(`smartctl 7.3 2022-02-28 r5338 [x86_64-linux-6.1.0] (local build)
=== START OF INFORMATION SECTION ===
Vendor:               PLAIN
Product:              Spindle 10K
Rotation Rate:        10000 rpm
=== START OF READ SMART DATA SECTION ===
SMART Health Status: OK
Current Drive Temperature:     34 C
Elements in grown defect list: 3
    Accumulated power on time, hours:minutes 10288:53
`);
  expect(drives).toHaveLength(1);
  expect(drives[0]).toMatchObject({ kind: 'hdd', health: 'passed', powerOnHours: 10288, reallocated: null });
  expect(drives[0]?.model).toContain('Spindle 10K');
});

it('smartctl of a SCSI drive that gives up: anything but OK is failed', () => {
  const { drives } = said(`smartctl 7.3 2022-02-28 r5338 [x86_64-linux-6.1.0] (local build)
=== START OF INFORMATION SECTION ===
Product:              Spindle 10K
=== START OF READ SMART DATA SECTION ===
SMART Health Status: FAILURE PREDICTION THRESHOLD EXCEEDED [asc=5d, ascq=0]
`);
  expect(drives[0]?.health).toBe('failed');
});

it('lspci at length: one card a device, what is said of it below is no card', () => {
  const { kinds, cards } =
    said(`00:02.0 VGA compatible controller: Plain Graphics 4 (rev 02) (prog-if 00 [VGA controller])
	Subsystem: Somebody Device 1234
	Flags: bus master, fast devsel, latency 0, IRQ 130
	Kernel driver in use: plain

02:00.0 Ethernet controller: Plain Networks Gigabit [Second] (rev 15)
	Subsystem: Somebody Ethernet controller: Device 8168
	Capabilities: [40] Power Management version 3
`);
  expect(kinds).toEqual(['lspci']);
  expect(cards).toEqual([
    { kind: 'VGA compatible controller', name: 'Plain Graphics 4' },
    { kind: 'Ethernet controller', name: 'Plain Networks Gigabit [Second]' },
  ]);
});

it('dmidecode told to be quiet: records without handles are read all the same', () => {
  const { kinds, board, memory } = said(`BIOS Information
	Vendor: Plain Firmware
	Version: 1.20
	Release Date: 03/04/2019

Base Board Information
	Manufacturer: Plain Boards
	Product Name: PB-46
	Type: Motherboard

Physical Memory Array
	Location: System Board Or Motherboard
	Use: System Memory
	Number Of Devices: 2

Memory Device
	Size: 8 GB
	Form Factor: DIMM
	Locator: DIMM_A1
	Bank Locator: BANK 0
	Type: DDR4
	Speed: 2666 MT/s
	Configured Memory Speed: 2400 MT/s

Memory Device
	Size: No Module Installed
	Form Factor: DIMM
	Locator: DIMM_B1
`);
  expect(kinds).toEqual(['dmidecode']);
  expect(board).toEqual({ vendor: 'Plain Boards', name: 'PB-46' });
  expect(
    memory.slots.map(({ locator, sizeMiB, speedMTs, configuredMTs }) => [locator, sizeMiB, speedMTs, configuredMTs]),
  ).toEqual([
    ['DIMM_A1', 8192, 2666, 2400],
    ['DIMM_B1', null, null, null],
  ]);
});
