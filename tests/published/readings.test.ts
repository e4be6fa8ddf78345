import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { MachineReport } from '../../core/custody/machineReport.ts';
import { readBytes } from '../../core/readings/readBytes.ts';
import { saidOf } from '../../core/readings/readText.ts';
import { describeOverOpenData } from '../openData.ts';

/** Slot as read by eye: locator, bank, MiB, kind, rated and set speed, form. */
type Slot = readonly [
  string | null,
  string | null,
  number | null,
  string | null,
  number | null,
  number | null,
  string | null,
];
type ByEye = {
  readonly board: readonly [string | null, string | null];
  readonly system: readonly [string | null, string | null];
  readonly firmware: readonly [string | null, string | null, string | null];
  readonly chassis: string | null;
  readonly processors: readonly (readonly [string | null, string | null, number | null])[];
  readonly slots: readonly Slot[];
};

const NO_SLOT: Slot = [null, null, null, null, null, null, null];
const many = (n: number, slot: Slot): readonly Slot[] => Array.from({ length: n }, () => slot);
const AMI = 'American Megatrends Inc.';

/** Values read out of the open dumps by eye, field by field. Open data: linuxhw/DMI, CC BY 4.0. */
const MACHINES: Readonly<Record<string, ByEye>> = {
  'dmi-001.txt': {
    board: ['ASUSTeK COMPUTER INC.', 'PRIME B360-PLUS'],
    system: [null, null],
    firmware: [AMI, '2501', '11/11/2020'],
    chassis: 'Desktop',
    processors: [['Intel(R) Core(TM) i3-8100 CPU @ 3.60GHz', 'LGA1151', 4]],
    slots: [
      ['ChannelA-DIMM1', 'BANK 0', null, null, null, null, null],
      ['ChannelA-DIMM2', 'BANK 1', 8192, 'DDR4', 2400, 2400, 'DIMM'],
      ['ChannelB-DIMM1', 'BANK 2', null, null, null, null, null],
      ['ChannelB-DIMM2', 'BANK 3', 8192, 'DDR4', 2400, 2400, 'DIMM'],
    ],
  },
  'dmi-002.txt': {
    board: ['ASUSTeK COMPUTER INC.', 'PRIME H310M-R R2.0'],
    system: ['Kraftway Corporation PLC', null],
    firmware: [AMI, '1002', '05/24/2019'],
    chassis: 'Desktop',
    processors: [['Intel(R) Celeron(R) G4920 CPU @ 3.20GHz', 'LGA1151', 2]],
    slots: [
      ['ChannelA-DIMM1', 'BANK 0', 8192, 'DDR4', 2400, 2400, 'DIMM'],
      ['ChannelB-DIMM1', 'BANK 2', null, null, null, null, null],
    ],
  },
  'dmi-003.txt': {
    board: ['ASUSTeK COMPUTER INC.', 'PRIME H470M-PLUS'],
    system: ['ASUS', null],
    firmware: [AMI, '1602', '01/14/2021'],
    chassis: 'Desktop',
    // Upgrade says only "Other"; the designation names the socket.
    processors: [['Intel(R) Core(TM) i3-10100 CPU @ 3.60GHz', 'LGA1200', 4]],
    slots: [
      ['ChannelA-DIMM1', 'BANK 0', null, null, null, null, null],
      ['ChannelA-DIMM2', 'BANK 1', 8192, 'DDR4', 2666, 2666, 'DIMM'],
      ['ChannelB-DIMM1', 'BANK 2', null, null, null, null, null],
      ['ChannelB-DIMM2', 'BANK 3', 8192, 'DDR4', 2666, 2666, 'DIMM'],
    ],
  },
  'dmi-004.txt': {
    board: ['Gigabyte Technology Co., Ltd.', 'X99-UD4-CF'],
    system: ['Gigabyte Technology Co., Ltd.', null],
    firmware: [AMI, 'F23', '06/07/2017'],
    chassis: 'Desktop',
    processors: [['Intel(R) Xeon(R) CPU E5-2699 v3 @ 2.30GHz', 'LGA2011-3', 18]],
    slots: [
      ['DIMM_A1', 'NODE 1', 16384, 'DDR4', 2133, 2133, 'DIMM'],
      ['DIMM_A2', 'NODE 1', 16384, 'DDR4', 2133, 2133, 'DIMM'],
      ['DIMM_B1', 'NODE 1', 16384, 'DDR4', 2133, 2133, 'DIMM'],
      ['DIMM_B2', 'NODE 1', 16384, 'DDR4', 2133, 2133, 'DIMM'],
      ['DIMM_C1', 'NODE 2', 16384, 'DDR4', 2133, 2133, 'DIMM'],
      ['DIMM_C2', 'NODE 2', null, 'DDR4', null, null, 'DIMM'],
      ['DIMM_D1', 'NODE 2', 16384, 'DDR4', 2133, 2133, 'DIMM'],
      ['DIMM_D2', 'NODE 2', 16384, 'DDR4', 2133, 2133, 'DIMM'],
    ],
  },
  'dmi-005.txt': {
    board: ['HP', '8105'],
    system: ['HP', 'HP ProDesk 400 G2.5 SFF'],
    firmware: ['AMI', '02.14', '11/03/2015'],
    chassis: 'Desktop',
    processors: [['Intel(R) Pentium(R) CPU G3260 @ 3.30GHz', 'BGA1155', 2]],
    slots: [
      ['DIMM3', 'BANK 1', null, null, null, null, 'DIMM'],
      ['DIMM1', 'BANK 3', 4096, 'DDR3', 1600, 1333, 'DIMM'],
    ],
  },
  'dmi-006.txt': {
    board: ['ASUSTeK Computer INC.', 'P5KPL-AM SE'],
    system: [null, null],
    firmware: [AMI, '0702', '08/20/2010'],
    chassis: 'Desktop',
    processors: [['Intel(R) Core(TM)2 Quad CPU Q9550 @ 2.83GHz', 'LGA775', null]],
    slots: [
      ['DIMM A1', 'BANK0', 2048, 'DDR2', 800, null, 'DIMM'],
      ['DIMM B1', 'BANK1', 2048, 'DDR2', 800, null, 'DIMM'],
    ],
  },
  'dmi-007.txt': {
    board: ['ASRock', 'FM2A68M-DG3+'],
    system: [null, null],
    firmware: [AMI, 'P2.60', '01/12/2016'],
    chassis: 'Desktop',
    processors: [['AMD A4-6300 APU with Radeon(tm) HD Graphics', 'FM2', 2]],
    slots: [
      ['DIMM 0', 'CHANNEL A', 4096, 'DDR3', 1600, 1600, 'DIMM'],
      ['DIMM 0', 'CHANNEL B', null, 'DDR3', null, null, 'SODIMM'],
    ],
  },
  'dmi-018.txt': {
    board: ['ASUSTeK COMPUTER INC.', 'ROG STRIX X670E-F GAMING WIFI'],
    system: ['ASUS', null],
    firmware: [AMI, '0805', '11/04/2022'],
    chassis: 'Desktop',
    processors: [['AMD Ryzen 9 7950X 16-Core Processor', 'AM5', 16]],
    slots: [
      ['DIMM 0', 'P0 CHANNEL A', 32768, 'DDR5', 4800, 4200, 'DIMM'],
      ['DIMM 1', 'P0 CHANNEL A', 32768, 'DDR5', 4800, 4200, 'DIMM'],
      ['DIMM 0', 'P0 CHANNEL B', 32768, 'DDR5', 4800, 4200, 'DIMM'],
      ['DIMM 1', 'P0 CHANNEL B', 32768, 'DDR5', 4800, 4200, 'DIMM'],
    ],
  },
  'dmi-024.txt': {
    board: ['Hewlett-Packard', '0AACh'],
    system: ['Hewlett-Packard', 'HP Compaq dc7800 Convertible Minitower'],
    firmware: ['Hewlett-Packard', '786F1 v01.24', '03/18/2008'],
    chassis: 'Mini Tower',
    processors: [['Intel(R) Core(TM)2 Duo CPU E8400 @ 3.00GHz', 'LGA775', 2]],
    // The fifth record is the firmware's own chip (4096 kB) and no memory of the machine.
    slots: [
      ['XMM1', null, 2048, 'DDR2', 800, null, 'DIMM'],
      ['XMM2', null, 1024, 'DDR2', 667, null, 'DIMM'],
      ['XMM3', null, 1024, 'DDR2', 667, null, 'DIMM'],
      ['XMM4', null, 1024, 'DDR2', 667, null, 'DIMM'],
    ],
  },
  'dmi-029.txt': {
    board: ['LENOVO', 'SHARKBAY'],
    system: ['LENOVO', '10AAS1CB01'],
    firmware: ['LENOVO', 'FBKTA6AUS', '01/28/2015'],
    chassis: 'Desktop',
    processors: [['Intel(R) Core(TM) i5-4570T CPU @ 2.90GHz', 'BGA1155', 2]],
    slots: [
      ['ChannelA-DIMM0', 'BANK 0', 4096, 'DDR3', 1600, 1600, 'SODIMM'],
      ['ChannelB-DIMM0', 'BANK 2', 8192, 'DDR3', 1600, 1600, 'SODIMM'],
    ],
  },
  'dmi-033.txt': {
    board: ['Intel OEM', 'Intel E5 M2L-8D'],
    system: [null, null],
    firmware: [AMI, '4.6.5', '06/18/2019'],
    chassis: 'Desktop',
    processors: [
      ['Intel(R) Xeon(R) CPU E5-2689 0 @ 2.60GHz', 'LGA2011', 8],
      ['Intel(R) Xeon(R) CPU E5-2689 0 @ 2.60GHz', 'LGA2011', 8],
    ],
    // Two arrays declare eight slots each; there are records of eight.
    slots: [
      ...[0, 1, 2, 3].map((n): Slot => [`Node0_Dimm${n}`, 'Node0_Bank0', null, null, null, null, 'DIMM']),
      ['Node0_Dimm4', 'Node0_Bank0', 4096, 'DDR3', 1600, 1600, 'DIMM'],
      ['Node0_Dimm5', 'Node0_Bank0', 4096, 'DDR3', 1600, 1600, 'DIMM'],
      ['Node0_Dimm6', 'Node0_Bank0', null, null, null, null, 'DIMM'],
      ['Node0_Dimm7', 'Node0_Bank0', null, null, null, null, 'DIMM'],
      ...many(8, NO_SLOT),
    ],
  },
  'dmi-036.txt': {
    // The only base-board record has no Type.
    board: ['MSI', '0A90'],
    system: ['Hewlett-Packard', 'HP Compaq dx2300 Microtower'],
    firmware: ['Phoenix Technologies, LTD', 'MS7336 1.08', '05/25/2007'],
    chassis: 'Desktop',
    processors: [['Intel(R) Pentium(R) D', 'Socket 775', null]],
    slots: [
      ['A0', 'Bank0/1', 1024, 'DDR2', 667, null, 'DIMM'],
      ['A1', 'Bank2/3', 1024, 'DDR2', 667, null, 'DIMM'],
    ],
  },
  'dmi-041.txt': {
    board: ['MSI', 'A68HM-E33 V2 (MS-7721)'],
    system: ['MSI', 'MS-7721'],
    firmware: [AMI, 'V8.4', '08/10/2016'],
    chassis: 'Desktop',
    processors: [['AMD A10-6800K APU with Radeon(tm) HD Graphics', 'FM2', 4]],
    slots: [
      ['DIMM 0', 'CHANNEL A', null, 'DDR3', null, null, 'SODIMM'],
      ['DIMM 1', 'CHANNEL A', 8192, 'DDR3', 1333, 1333, 'DIMM'],
      ['DIMM 0', 'CHANNEL B', 2048, 'DDR3', 1333, 1333, 'DIMM'],
      ['DIMM 1', 'CHANNEL B', null, 'DDR3', null, null, 'SODIMM'],
    ],
  },
  'dmi-042.txt': {
    board: ['EVGA', '132-BL-E758'],
    system: [null, null],
    firmware: ['Phoenix Technologies, LTD', '6.00 PG', '08/25/2011'],
    chassis: 'Desktop',
    processors: [['Intel(R) Core(TM) i7', 'Socket 423', 8]],
    slots: [0, 1, 2, 3, 4, 5].map((n): Slot => [`A${n}`, `Bank${2 * n}/${2 * n + 1}`, null, null, null, null, 'DIMM']),
  },
  'dmi-043.txt': {
    board: ['Gigabyte Technology Co., Ltd.', 'Z270X-Ultra Gaming-CF'],
    system: ['Gigabyte Technology Co., Ltd.', 'Z270X-Ultra Gaming'],
    firmware: [AMI, 'F4', '02/10/2017'],
    chassis: 'Desktop',
    processors: [],
    // Cut inside the third record; the fourth is only declared.
    slots: [
      ['ChannelA-DIMM0', 'BANK 0', null, null, null, null, null],
      ['ChannelA-DIMM1', 'BANK 1', 8192, 'DDR4', 3000, 3000, 'DIMM'],
      NO_SLOT,
      NO_SLOT,
    ],
  },
};

/** Drives: model, kind, health, hours, reallocated, pending, uncorrectable, percentage used, media errors. */
type Drive = readonly [
  string,
  string | null,
  string | null,
  number,
  number | null,
  number | null,
  number | null,
  number | null,
  number | null,
];

/** linuxhw/EnterpriseDrive (CC BY 4.0), truenas/py-SMART tests (LGPL), smartctl_exporter testdata (Apache 2.0). */
const DRIVES: Readonly<Record<string, Drive>> = {
  // Reallocate_NAND_Blk_Cnt counts as a reallocation, Retired_Block_Count does not.
  'smart-001.txt': ['Crucial_CT525MX300SSD1', 'ssd', 'passed', 10512, 0, 0, 0, null, null],
  'smart-002.txt': ['KINGSTON SV300S37A240G', 'ssd', 'passed', 37330, null, null, null, null, null],
  'smart-003.txt': ['SDLF1DAR-480G-1HA1', 'ssd', 'passed', 30118, 0, null, null, null, null],
  'smart-012.txt': ['ST1000DM010-2EP102', 'hdd', 'passed', 14233, 0, 8, 8, null, null],
  'smart-013.txt': ['ST8000DM005-2EH112', 'hdd', 'passed', 39995, 8, 0, 0, null, null],
  'smart-015.txt': ['SAMSUNG HD502HI', null, 'passed', 96025, 21, 1, 0, null, null],
  'smart-017.txt': ['SAMSUNG MZVLB1T0HALR-00000', 'nvme', 'passed', 10065, null, null, null, 1, 1],
  'smart-019.txt': ['WDC WD2002FYPS-01U1B1', 'hdd', 'failed', 76120, 1056, 309, 97, null, null],
  'smart-020.txt': ['ST31000528AS', 'hdd', 'failed', 19410, 4010, 5, 5, null, null],
  'smart-021.txt': ['KXG50ZNV512G TOSHIBA', 'nvme', 'failed', 31039, null, null, null, 255, 0],
  'smart-011.txt': ['Samsung SSD 970 PRO 512GB', 'nvme', 'failed', 28590, null, null, null, 204, 0],
  'smart-022.txt': ['ST4000DM000-1F2168', 'hdd', 'passed', 66595, 0, 1656, 1656, null, null],
  'smartlib-002.txt': ['WDS100T3X0C-00SJG0', 'nvme', 'passed', 2608, null, null, null, 0, 0],
  'smartjson-001.json': ['WDC WUS721010ALE6L4', 'hdd', 'passed', 9829, 0, 0, 0, null, null],
  'smartjson-003.json': ['INTEL SSDSC2BB480G7', 'ssd', 'passed', 52003, 0, 0, null, null, null],
  'smartjson-004.json': ['Micron_7400_MTFDKCB3T8TDZ', 'nvme', 'passed', 2436, null, null, null, 0, 0],
  'smartjson-006.json': ['SEAGATE ST373453LC', 'hdd', 'passed', 102880, null, null, null, null, null],
};

describeOverOpenData('what the open dumps say, read by eye', (data) => {
  const read = (name: string): MachineReport => {
    const [path] = data.files('hardware', new RegExp(`^${name.replace('.', '\\.')}$`));
    if (path === undefined) throw new Error(`no ${name}`);
    return saidOf(readBytes(readFileSync(path)));
  };

  it.each(Object.entries(MACHINES))('%s: machine, processors and every memory slot', (name, byEye) => {
    const said = read(name);
    expect(said.kinds).toEqual(['dmidecode']);
    expect({
      board: [said.board.vendor, said.board.name],
      system: [said.system.vendor, said.system.name],
      firmware: [said.firmware.vendor, said.firmware.version, said.firmware.date],
      chassis: said.chassis,
      processors: said.processors.map((one) => [one.name, one.socket, one.cores]),
      slots: said.memory.slots.map((slot) => [
        slot.locator,
        slot.bank,
        slot.sizeMiB,
        slot.type,
        slot.speedMTs,
        slot.configuredMTs,
        slot.formFactor,
      ]),
    }).toEqual(byEye);
  });

  it.each(Object.entries(DRIVES))('%s: the drive and its figures', (name, byEye) => {
    const said = read(name);
    expect(said.kinds).toEqual(['smartctl']);
    expect(said.drives.map((drive) => Object.values(drive))).toEqual([[...byEye]]);
  });

  it.each([
    ['lscpu-001.txt', 'AMD Ryzen 7 1700 Eight-Core Processor', 8],
    ['lscpu-002.txt', 'AMD FX(tm)-8300 Eight-Core Processor', 4],
    ['lscpu-003.txt', 'Intel(R) Core(TM) i3-3220 CPU @ 3.30GHz', 2],
    ['lscpu-004.txt', 'Intel(R) Celeron(R) CPU 1005M @ 1.90GHz', 2],
  ])('%s: the processor', (name, processor, cores) => {
    expect(read(name).processors).toEqual([{ name: processor, socket: null, cores }]);
  });

  it('lspci with numbers: cards without their numbers and revisions', () => {
    expect(read('lspci-002.txt').cards.map(({ kind, name }) => `${kind}: ${name}`)).toEqual([
      'VGA compatible controller: Intel Corporation 82865G Integrated Graphics Controller',
      'IDE interface: Intel Corporation 82801EB/ER (ICH5/ICH5R) IDE Controller',
      'IDE interface: Intel Corporation 82801EB (ICH5) SATA Controller',
      "Multimedia audio controller: Intel Corporation 82801EB/ER (ICH5/ICH5R) AC'97 Audio Controller",
      'Ethernet controller: Intel Corporation 82562EZ 10/100 Ethernet Controller',
    ]);
  });

  it('lshw as text and as JSON: board, processor and memory', () => {
    const text = read('lshw-001.txt');
    expect([text.board.name, text.firmware.date, text.processors[0]?.name, text.processors[0]?.cores]).toEqual([
      'ADL-N',
      '03/12/2024',
      'Intel(R) N100',
      4,
    ]);
    expect(text.memory.slots.map((slot) => [slot.locator, slot.sizeMiB, slot.formFactor])).toEqual(
      ['A', 'B', 'C', 'D'].map((letter) => [`Controller0-Channel${letter}`, 2048, 'Row Of Chips']),
    );
    const json = read('lshw-002.json');
    expect([json.board.vendor, json.board.name, json.processors[0]?.name]).toEqual([
      'GENERIC',
      'ABC123',
      'Intel Xeon E312xx (Sandy Bridge)',
    ]);
    expect(json.memory.slots.map((slot) => [slot.sizeMiB, slot.speedMTs])).toEqual([
      [2048, 1600],
      [null, null],
      [1024, 1600],
      [1024, 1600],
    ]);
  });

  it('smart-023.txt is a page of text and no report', () => {
    const said = read('smart-023.txt');
    expect([said.kinds, said.gaps.length]).toEqual([[], 1]);
  });
});
