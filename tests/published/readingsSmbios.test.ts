import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import memory from '../../assets/fit/memory.json' with { type: 'json' };
import sockets from '../../assets/fit/sockets.json' with { type: 'json' };
import { readBytes } from '../../core/readings/readBytes.ts';
import { readText } from '../../core/readings/readText.ts';
import { describeOverOpenData } from '../openData.ts';

/**
 * DMTF DSP0134, as two public implementations have it that agree: tianocore/edk2 SmBios.h (SMBIOS 3.8) at c5aa7e7d and
 * mirror/dmidecode dmidecode.c at b70f6ee0. Clause 7.18.2 (memory type), 7.18.1 (form factor), 7.4.1 (chassis).
 */
const MEMORY_TYPES: Readonly<Record<number, string>> = {
  15: 'SDRAM',
  18: 'DDR',
  19: 'DDR2',
  20: 'DDR2 FB-DIMM',
  24: 'DDR3',
  26: 'DDR4',
  27: 'LPDDR',
  28: 'LPDDR2',
  29: 'LPDDR3',
  30: 'LPDDR4',
  32: 'HBM',
  33: 'HBM2',
  34: 'DDR5',
  35: 'LPDDR5',
  36: 'HBM3',
};
const FORM_FACTORS = ['DIMM', 'SODIMM', 'FB-DIMM', 'Die'];
const CHASSIS =
  'Desktop|Low Profile Desktop|Pizza Box|Mini Tower|Tower|Portable|Laptop|Notebook|Hand Held|Docking Station|All In One|Sub Notebook|Space-saving|Lunch Box|Main Server Chassis|Expansion Chassis|Sub Chassis|Rack Mount Chassis|Sealed-case PC|Tablet|Convertible|Detachable|IoT Gateway|Embedded PC|Mini PC|Stick PC'.split(
    '|',
  );
/** Clause 7.5.5, hexadecimal; LGA1851 in the first implementation only. */
const SOCKETS: Readonly<Record<number, string>> = {
  21: 'LGA775',
  23: 'AM2',
  27: 'AM3',
  29: 'LGA1156',
  36: 'LGA1155',
  41: 'FM1',
  42: 'FM2',
  45: 'LGA1150',
  49: 'AM4',
  50: 'LGA1151',
  57: 'LGA2066',
  62: 'LGA1200',
  64: 'LGA1700',
  73: 'AM5',
  85: 'LGA1851',
};

const module = (type: string, form: string) =>
  `Handle 0x0011, DMI type 17, 40 bytes\nMemory Device\n\tSize: 8 GB\n\tForm Factor: ${form}\n\tLocator: D\n\tType: ${type}\n\n`;

it.each(Object.values(MEMORY_TYPES))('memory of type %s is read under that name', (type) => {
  expect(readText(module(type, 'DIMM')).memory.slots[0]?.type).toBe(type);
});

it.each(FORM_FACTORS)('a module of form %s is read under that name', (form) => {
  expect(readText(module('DDR4', form)).memory.slots[0]?.formFactor).toBe(form);
});

it.each(['Other', 'Unknown', '<OUT OF SPEC>'])('memory of type %s has no type', (type) => {
  expect(readText(module(type, 'DIMM')).memory.slots[0]?.type).toBeNull();
});

it.each(Object.values(SOCKETS))('a processor whose Upgrade is Socket %s sits in that socket', (socket) => {
  const text = `Handle 0x0004, DMI type 4, 48 bytes\nProcessor Information\n\tSocket Designation: U3E1\n\tVersion: K6\n\tStatus: Populated, Enabled\n\tUpgrade: Socket ${socket}\n\n`;
  expect(readText(text).processors[0]?.socket).toBe(socket);
});

it.each(CHASSIS)('a chassis of type %s is read under that name', (chassis) => {
  expect(readText(`Handle 0x0003, DMI type 3, 22 bytes\nChassis Information\n\tType: ${chassis}\n\n`).chassis).toBe(
    chassis,
  );
});

it('the codes that fit uses are those of the standard: 12h is DDR here, whatever byte 2 of a module says', () => {
  expect(memory.smbiosTypes.map(({ code, memory: name }) => [name, MEMORY_TYPES[code]])).toEqual(
    memory.smbiosTypes.map(({ memory: name }) => [name, name]),
  );
  expect(sockets.smbios.map(({ code, socket }) => [socket, SOCKETS[code]])).toEqual(
    sockets.smbios.map(({ socket }) => [socket, socket]),
  );
});

describeOverOpenData('names in the open dumps', (data) => {
  it('every memory type and form and chassis that is read is one of the standard', () => {
    const read = data.files('hardware', /^dmi-/).map((path) => readBytes(readFileSync(path)));
    const names = <Name>(of: readonly (Name | null)[]) => [...new Set(of.filter((name) => name !== null))];
    const slots = read.flatMap(({ slots }) => slots);
    expect(names(slots.map(({ type }) => type)).filter((type) => !Object.values(MEMORY_TYPES).includes(type))).toEqual(
      [],
    );
    expect(names(slots.map(({ formFactor }) => formFactor)).filter((form) => !FORM_FACTORS.includes(form))).toEqual([]);
    expect(names(read.map(({ chassis }) => chassis)).filter((name) => !CHASSIS.includes(name))).toEqual([]);
  });
});
