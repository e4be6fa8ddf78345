import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { expect, it } from 'vitest';
import { attributeFaults } from '../../core/fit/attributes.ts';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { readBytes } from '../../core/readings/readBytes.ts';
import { saidOf } from '../../core/readings/readText.ts';
import { identifiersOf, withoutIdentifiers } from '../../core/readings/share.ts';
import { slotsAndPartsFrom } from '../../core/readings/slotsAndParts.ts';
import { describeOverOpenData } from '../openData.ts';

/** The tool each kind of file of the open data came from. */
const TOOL_OF: Readonly<Record<string, string>> = {
  dmi: 'dmidecode',
  smart: 'smartctl',
  smartlib: 'smartctl',
  smartjson: 'smartctl',
  lscpu: 'lscpu',
  lspci: 'lspci',
  lshw: 'lshw',
};

describeOverOpenData('every open dump', (data) => {
  const files = data.files('hardware', /^[a-z]+-\d+\.(?:txt|json)$/);

  it.each(files.map((path) => [basename(path), path]))('%s is read by its content', (name, path) => {
    const reading = readBytes(readFileSync(path));
    const expected = name === 'smart-023.txt' ? [] : [TOOL_OF[name.split('-')[0] ?? '']];
    expect(reading.tools).toEqual(expected);
  });

  it.each(files.map((path) => [basename(path), path]))('%s comes back the same from the journal', (_, path) => {
    const said = saidOf(readBytes(readFileSync(path)));
    expect(JSON.parse(canonicalJson(said))).toEqual(said);
    const reading = readBytes(readFileSync(path));
    expect(JSON.parse(canonicalJson(reading))).toEqual(reading);
  });

  it.each(data.files('hardware', /^dmi-/).map((path) => [basename(path), path]))(
    '%s gives a slot plan without doubles and parts with known attributes',
    (_, path) => {
      const reading = readBytes(readFileSync(path));
      const said = saidOf(reading);
      const { slots, parts } = slotsAndPartsFrom(said, reading.cardSlots, reading);
      const ids = slots.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      expect(parts.every(({ slot }) => ids.includes(slot))).toBe(true);
      expect(new Set(parts.map(({ slot }) => slot)).size).toBe(parts.length);
      expect(slots.filter(({ takes }) => takes === 'dimm')).toHaveLength(said.memory.slots.length);
      expect(parts.filter(({ kind }) => kind === 'dimm')).toHaveLength(
        said.memory.slots.filter(({ sizeMiB }) => sizeMiB !== null).length,
      );
      expect(parts.flatMap(({ kind, attributes }) => attributeFaults(kind as 'dimm', attributes))).toEqual([]);
    },
  );

  it('counts all of them', () => {
    expect(files).toHaveLength(85);
  });
});

it('keeps serial numbers apart: neither the plain form nor the form to share has one', () => {
  const text = [
    'Handle 0x0001, DMI type 1, 27 bytes\nSystem Information\n\tManufacturer: Fernhill\n\tSerial Number: SYS-77421',
    'Handle 0x0002, DMI type 2, 15 bytes\nBase Board Information\n\tProduct Name: AM-B46\n\tSerial Number: BRD-77422',
    'Handle 0x0004, DMI type 4, 48 bytes\nProcessor Information\n\tStatus: Populated, Enabled\n\tVersion: K6\n\tSerial Number: CPU-77423',
    'Handle 0x0011, DMI type 17, 40 bytes\nMemory Device\n\tSize: 8 GB\n\tLocator: DIMM 1\n\tSerial Number: MEM-77424',
    'smartctl 7.3\nDevice Model: Plain Disk\nSerial Number: DRV-77425\nSMART overall-health self-assessment test result: PASSED',
    '',
  ].join('\n\n');
  const reading = readBytes(new TextEncoder().encode(text));
  expect(identifiersOf(reading).map(({ of, serial }) => `${of} ${serial}`)).toEqual([
    'system SYS-77421',
    'board BRD-77422',
    'processors[0] CPU-77423',
    'memory.slots[0] MEM-77424',
    'drives[0] DRV-77425',
  ]);
  expect(JSON.stringify(saidOf(reading))).not.toMatch(/7742\d/);
  expect(JSON.stringify(withoutIdentifiers(reading))).not.toMatch(/7742\d/);
  expect(identifiersOf(withoutIdentifiers(reading))).toEqual([]);
});
