import { expect, it } from 'vitest';
import { epochMs } from '../time.ts';
import { decode } from './decode.ts';
import { readBytes } from './readBytes.ts';
import { readMachineReport } from './readMachineReport.ts';
import { readText, saidOf } from './readText.ts';
import { powerOnHours } from './smart/attributes.ts';
import { isPlaceholder, sizeInMiB, wholeNumber } from './values.ts';

const table = (...records: readonly string[]) => `# dmidecode 3.3\n\n${records.join('\n\n')}\n\n`;
const record = (type: number, title: string, fields: Readonly<Record<string, string>>, handle = '0x0011') =>
  [
    `Handle ${handle}, DMI type ${type}, 40 bytes`,
    title,
    ...Object.entries(fields).map(([k, v]) => `\t${k}: ${v}`),
  ].join('\n');
const module = (fields: Readonly<Record<string, string>>, handle: string) =>
  record(17, 'Memory Device', fields, handle);
const board = record(2, 'Base Board Information', {
  Manufacturer: 'Aldermoor Béton',
  'Product Name': 'AM-B46',
  Type: 'Motherboard',
});
const bytes = (text: string) => new TextEncoder().encode(text);
const boardOf = (data: Uint8Array) => saidOf(readBytes(data)).board;
const ours = { vendor: 'Aldermoor Béton', name: 'AM-B46' };

it.each([
  ['\r\n', table(board).replaceAll('\n', '\r\n')],
  ['\r', table(board).replaceAll('\n', '\r')],
  ['blanks for tabs', table(board).replaceAll('\t', '        ')],
  ['no indentation', table(board).replaceAll('\t', '')],
])('reads a table with %s', (_, text) => {
  expect(readText(text).board).toEqual(ours);
});

it('reads UTF-8, Latin-1 and UTF-16 either way round, with a mark and without', () => {
  const text = table(board);
  const wide = new Uint8Array(Uint16Array.from(text, (char) => char.charCodeAt(0)).buffer);
  const swapped = wide.map((_, at) => wide[at ^ 1] ?? 0);
  expect(boardOf(bytes(text))).toEqual(ours);
  expect(boardOf(bytes(`\ufeff${text}`))).toEqual(ours);
  expect(boardOf(Uint8Array.from(text, (char) => char.charCodeAt(0)))).toEqual(ours);
  expect(boardOf(wide)).toEqual(ours);
  expect(boardOf(swapped)).toEqual(ours);
  expect(boardOf(Uint8Array.of(0xff, 0xfe, ...wide))).toEqual(ours);
});

it('reads several tools from one file, whatever their order', () => {
  const disk =
    'smartctl 7.3\nDevice Model: Plain Disk\nRotation Rate: 7200 rpm\nSMART overall-health self-assessment test result: PASSED\n';
  const listed = '{"blockdevices":[{"name":"sda","type":"disk","model":"Plain Disk","rota":true}]}\n';
  const said = readText(`${listed + disk + table(board)}Architecture: x86_64\nModel name: K6\nCore(s) per socket: 6\n`);
  expect(said.kinds).toEqual(['lsblk', 'smartctl', 'dmidecode', 'lscpu']);
  expect(said.drives).toHaveLength(1);
  expect(said.processors).toEqual([{ name: 'K6', socket: null, cores: 6 }]);
  expect(said.board).toEqual(ours);
});

it('reads the JSON of a tool that was cut off, as far as its values are whole', () => {
  const said = readText(
    '{"smartctl":{"exit_status":4},"model_name":"Plain Disk","smart_status":{"passed":false},"power_on_time":{"hou',
  );
  expect(said.drives[0]).toMatchObject({ model: 'Plain Disk', health: 'failed', powerOnHours: null });
  expect(said.gaps.map(({ about }) => about)).toContain('json');
});

it.each([
  ['Architektur: x86_64\nModellname: K6\nKern(e) pro Sockel: 6\n', 6],
  ['Architecture : x86_64\nNom de modèle : K6\nCœur(s) par socket : 4\n', 4],
  ['架构： x86_64\n型号名称： K6\n每个座的核数： 8\n', 8],
])('reads a processor in the language of the tool: %s', (text, cores) => {
  expect(readText(text).processors).toEqual([{ name: 'K6', socket: null, cores }]);
});

it('counts a slot whose record was cut before its size, and does not call it filled', () => {
  const said = readText(
    table(module({ Size: '8 GB', Locator: 'A1' }, '0x0011')) +
      'Handle 0x0012, DMI type 17, 40 bytes\nMemory Device\n\tLocator: A2\n\tFor',
  );
  expect(said.memory.slots.map(({ locator, sizeMiB }) => [locator, sizeMiB])).toEqual([
    ['A1', 8192],
    ['A2', null],
  ]);
  expect(said.gaps.find(({ about }) => about === 'memory.slots[1]')?.why).toContain('A2');
});

it('takes no value that the end of the text may have cut in two', () => {
  expect(
    readText('Handle 0x0002, DMI type 2, 15 bytes\nBase Board Information\n\tManufacturer: Alder').board.vendor,
  ).toBeNull();
});

it('passes over an empty socket and a processor that is none', () => {
  const cpu = (handle: string, fields: Readonly<Record<string, string>>) =>
    record(4, 'Processor Information', fields, handle);
  const said = readText(
    table(
      cpu('0x1', { Type: 'Central Processor', Version: 'Empty One', Status: 'Unpopulated' }),
      cpu('0x2', { Type: 'Math Processor', Version: 'Helper', Status: 'Populated, Enabled' }),
      cpu('0x3', {
        Type: 'Central Processor',
        Version: '  K6   65G ',
        Status: 'Populated, Enabled',
        'Core Count': '6',
      }),
    ),
  );
  expect(said.processors).toEqual([{ name: 'K6 65G', socket: null, cores: 6 }]);
});

it('takes a table that was printed twice for one', () => {
  const once = table(module({ Size: '8 GB', Locator: 'A1' }, '0x0011'));
  expect(readText(once + once).memory.slots).toHaveLength(1);
});

it.each([
  ['To Be Filled By O.E.M.', true],
  ['<BAD INDEX>', true],
  ['Default string', true],
  ['Array1_PartNumber0', true],
  ['[Empty]', true],
  ['  ', true],
  ['Unknown', true],
  ['OptiPlex 7010', false],
  ['MS-7721', false],
  ['02.14', false],
])('%s is a placeholder: %s', (text, is) => {
  expect(isPlaceholder(text)).toBe(is);
});

it.each(['10,065', '10.065', "10'065", '10 065', '10\u00a0065', '10\u202f065', '10065', ' 10065 (3 4)'])(
  'reads the digit groups of %j',
  (text) => {
    expect(wholeNumber(text)).toBe(10_065);
  },
);

it.each([
  ['8192 MB', 8192],
  ['8 GB', 8192],
  ['4096 kB', 4],
  ['1 TB', 1_048_576],
  ['No Module Installed', null],
])('%s is %s MiB', (text, mib) => {
  expect(sizeInMiB(text)).toBe(mib);
});

it.each([
  ['Power_On_Hours', '12129 (59 125 0)', 12_129],
  ['Power_On_Hours_and_Msec', '23992h+00m+00.000s', 23_992],
  ['Power_On_Minutes', '119', 1],
  ['Power_On_Half_Minutes', '241', 2],
  ['Power_On_Seconds', '7199', 1],
])('%s of %s is full hours', (name, raw, hours) => {
  expect(powerOnHours({ name, raw })).toBe(hours);
});

const png = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0);
it.each([
  ['an empty file', new Uint8Array(), 'empty'],
  ['a picture', png, 'png'],
  ['a zip', Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0), 'zip'],
  ['data', Uint8Array.from({ length: 999 }, (_, at) => (at * 7) % 32), 'binary'],
  ['far too much text', new Uint8Array(200_000_000).fill(65), 'too-large-text'],
])('refuses %s and says what it looks like and what is accepted', (_, data, looksLike) => {
  expect(decode(data)).toEqual({ refused: 'not-a-report', looksLike });
  const [gap] = readBytes(data).gaps;
  expect(gap?.why).toContain('It looks like');
  expect(gap?.why).toContain('dmidecode');
});

const nvme = (more: string) =>
  `smartctl 7.3\nModel Number: N\nSMART overall-health self-assessment test result: PASSED\n${more}\n`;
const remarks = (text: string, asOf: number | null = null) =>
  saidOf(readMachineReport(text), undefined, asOf === null ? null : epochMs(asOf)).remarks;

it('decodes every bit of an NVMe critical warning by itself, and names those without a meaning', () => {
  const says = (byte: string) => remarks(nvme(`Critical Warning: ${byte}`)).map((remark) => remark.says);
  expect(says('0x00')).toEqual([]);
  expect(['0x01', '0x02', '0x04', '0x08', '0x10', '0x20'].map((byte) => says(byte).length)).toEqual([1, 1, 1, 1, 1, 1]);
  expect(new Set(['0x01', '0x02', '0x04', '0x08', '0x10', '0x20'].flatMap(says)).size).toBe(6);
  expect(says('0x1f')).toHaveLength(5);
  expect(says('0x80')[0]).toContain('0x80');
});

it('decodes every bit of the exit status of smartctl', () => {
  const of = (status: number) =>
    remarks(`{"smartctl":{"exit_status":${status}},"model_name":"D","smart_status":{"passed":true}}`);
  expect([0, 1, 2, 4, 8, 16, 32, 64, 128, 255].map((status) => of(status).length)).toEqual([
    0, 1, 1, 1, 1, 1, 1, 1, 1, 8,
  ]);
});

it('gives every remark a reason and a source', () => {
  const text = table(
    module(
      { Size: '8 GB', Locator: 'DIMM_A1', Type: 'DDR4', Speed: '3200 MT/s', 'Configured Memory Speed': '2133 MT/s' },
      '0x1',
    ),
    module(
      { Size: '4 GB', Locator: 'DIMM_A2', Type: 'DDR4', Speed: '2666 MT/s', 'Configured Memory Speed': '2133 MT/s' },
      '0x2',
    ),
    module({ Size: 'No Module Installed', Locator: 'DIMM_B1' }, '0x3'),
    module({ Size: 'No Module Installed', Locator: 'DIMM_B2' }, '0x4'),
    record(0, 'BIOS Information', { Vendor: 'F', Version: '1', 'Release Date': '11/19/2015' }, '0x5'),
  );
  const all = [...remarks(text, Date.UTC(2026, 10, 25)), ...remarks(nvme('Unsafe Shutdowns: 7'))];
  expect(all.map(({ about }) => about)).toEqual([
    'memory.slots',
    'memory.slots',
    'memory.slots[0].configuredMTs',
    'memory.slots[1].configuredMTs',
    'firmware.date',
    'drives[0]',
  ]);
  expect(all.every(({ says, why, source }) => says !== '' && why !== '' && source !== '')).toBe(true);
  expect(all[0]?.says).toContain('one memory channel');
});

it('says nothing of placement while a slot may be filled or not', () => {
  const text = table(
    module({ Size: '8 GB', Locator: 'DIMM_A1', Type: 'DDR4' }, '0x1'),
    module({ Locator: 'DIMM_A2' }, '0x2'),
    module({ Size: '8 GB', Locator: 'DIMM_B1', Type: 'DDR4' }, '0x3'),
    module({ Size: 'No Module Installed', Locator: 'DIMM_B2' }, '0x4'),
  );
  expect(remarks(text)).toEqual([]);
});

it('does not call a module slow when the firmware gives its clock for its data rate', () => {
  const text = table(
    module({ Size: '8 GB', Locator: 'D', Speed: '1333 MT/s', 'Configured Memory Speed': '667 MT/s' }, '0x1'),
  );
  expect(remarks(text)).toEqual([]);
});
