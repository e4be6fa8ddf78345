import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { readBytes } from '../../core/readings/readBytes.ts';
import type { Reading } from '../../core/readings/reading.ts';
import { readReport } from '../../core/readings/readReport.ts';
import { saidOf } from '../../core/readings/readText.ts';
import { slotsAndPartsFrom } from '../../core/readings/slotsAndParts.ts';
import { describeOverOpenData } from '../openData.ts';
import { mutated, stream } from './mutate.ts';

const LONG = process.env.KNOWNGOOD_LONG === '1';
const INPUTS = LONG ? 120_000 : 3_000;
/** Milliseconds a megabyte of characters may take; a small input may take this much by a pause of the machine. */
const MS_PER_MB = 50;
const PAUSE_MS = 40;

/** What holds of every reading, whatever was read. */
function expectSound(reading: Reading): void {
  const said = saidOf(reading);
  const { slots, parts } = slotsAndPartsFrom(said, reading.cardSlots, reading);
  // The journal takes no half characters and no numbers that JSON has not.
  expect(JSON.parse(canonicalJson(said))).toEqual(said);
  expect(said.memory.slots.length).toBeLessThanOrEqual(128);
  expect(new Set(slots.map(({ id }) => id)).size).toBe(slots.length);
  expect(new Set(parts.map(({ slot }) => slot)).size).toBe(parts.length);
  if (said.kinds.length === 0) expect(said.gaps.length).toBeGreaterThan(0);
  const numbers = [...said.memory.slots, ...said.drives, ...said.processors].flatMap((one) => Object.values(one));
  expect(numbers.filter((value) => typeof value === 'number' && !(value >= 0 && value < Infinity))).toEqual([]);
}

/** Time of the fastest of a few readings: what the reader needs, not what the machine was busy with. */
function fastest(text: string): number {
  const times = [0, 1, 2].map(() => {
    const start = performance.now();
    readReport(text);
    return performance.now() - start;
  });
  return Math.min(...times);
}

describeOverOpenData(`${INPUTS} damaged inputs (120000 with KNOWNGOOD_LONG=1)`, (data) => {
  const texts = data.files('hardware', /\.(?:txt|json)$/).map((path) => readFileSync(path, 'latin1'));

  it('reads every one without a crash, in time and in bounds', { timeout: LONG ? 3_600_000 : 60_000 }, () => {
    const next = stream(20_261_125);
    const slow: string[] = [];
    for (let n = 0; n < INPUTS; n += 1) {
      const text = mutated(texts[next(texts.length)] ?? '', texts[next(texts.length)] ?? '', next);
      const start = performance.now();
      const reading = readReport(text);
      const took = performance.now() - start;
      if (took > PAUSE_MS && fastest(text) > (MS_PER_MB * text.length) / 1e6 + 2) slow.push(`input ${n}: ${took} ms`);
      expectSound(reading);
    }
    expect(slow).toEqual([]);
  });

  it('reads bytes that are no text of any encoding without a crash', () => {
    const next = stream(7);
    for (let n = 0; n < (LONG ? 20_000 : 500); n += 1) {
      const bytes = Uint8Array.from(Buffer.from(texts[next(texts.length)] ?? '', 'latin1').subarray(0, 6000));
      for (let k = next(200); k > 0; k -= 1) bytes[next(bytes.length)] = next(256);
      expectSound(readBytes(bytes));
    }
  });
});

/** Texts made to be slow: each is a megabyte of what a careless pattern would go over again and again. */
const MB = 1_000_000;
const HARD: readonly (readonly [string, string])[] = [
  ['one line without end', 'a'.repeat(MB)],
  ['blanks', ' '.repeat(MB)],
  ['empty lines', '\n'.repeat(MB)],
  ['brackets that never close', '[{"a":'.repeat(MB / 6)],
  ['lines that begin JSON', '{"\n'.repeat(MB / 3)],
  ['lines that begin JSON and close it', '{}\n'.repeat(MB / 3)],
  ['a text in JSON without end', `{"a":"${'b'.repeat(MB)}`],
  ['handles', 'Handle 0x0001, DMI type 17, 40 bytes\n'.repeat(MB / 37)],
  [
    'memory records',
    'Handle 0x0001, DMI type 17, 40 bytes\nMemory Device\n\tSize: 8 GB\n\tLocator: A\n'.repeat(MB / 74),
  ],
  ['tools by turns', '# dmidecode 3.3\nsmartctl 7.3\nArchitecture: x\n00:00.0 VGA: x\n'.repeat(MB / 60)],
  [
    'drives',
    'smartctl 7.3\nDevice Model: X\nSMART overall-health self-assessment test result: PASSED\n'.repeat(MB / 86),
  ],
  ['listed drives', `{"blockdevices":[${'{"type":"disk","name":"sda","model":"X"},'.repeat(MB / 41)}{}]}`],
  ['card slots', 'Handle 0x0001, DMI type 9, 17 bytes\nSystem Slot Information\n\tDesignation: A\n'.repeat(MB / 77)],
  ['nodes', `machine\n    description: x\n${'  *-bank:0\n     size: 1GiB\n'.repeat(MB / 27)}`],
  [
    'nodes deeper and deeper',
    `machine\n    description: x\n${Array.from({ length: 290 }, (_, n) => `${' '.repeat(n)}*-bank\n`)
      .join('')
      .repeat(20)}`,
  ],
  ['attributes', `smartctl 7.3\nID# ATTRIBUTE_NAME\n${'  5 A PO--CK 100 100 010 - 0\n'.repeat(MB / 29)}`],
  ['digit groups', `smartctl 7.3\nPower On Hours: ${'1,000'.repeat(MB / 5)}\n`],
  ['colons', ':'.repeat(MB)],
];

it.each(HARD)('a megabyte of %s is read in time', (_, text) => {
  const reading = readReport(text);
  expect(fastest(text)).toBeLessThan(MS_PER_MB * Math.max(1, text.length / MB));
  saidOf(reading);
});
