import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { canonicalJson } from '../../core/journal/canonicalJson.ts';
import { readBytes } from '../../core/readings/readBytes.ts';
import type { MachineReading } from '../../core/readings/reading.ts';
import { readMachineReport } from '../../core/readings/readMachineReport.ts';
import { saidOf } from '../../core/readings/readText.ts';
import { slotsAndPartsFrom } from '../../core/readings/slotsAndParts.ts';
import { describeOverOpenData } from '../openData.ts';
import { HARD, MB } from './hardTexts.ts';
import { mutated, stream } from './mutate.ts';

const LONG = process.env.KNOWNGOOD_LONG === '1';
const INPUTS = LONG ? 120_000 : 3_000;
/** Milliseconds a megabyte of characters may take, and what a reading may take however small it is. */
const MS_PER_MB = 50;
const LEAST_MS = 1;

/** What holds of every reading, whatever was read. */
function expectSound(reading: MachineReading): void {
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

/**
 * Milliseconds of processor time that reading a text takes: the least of several readings. Compiling and tidying memory
 * run beside the reading and only add to it; the reader itself does the same work each time.
 */
function costOf(text: string): number {
  const costs = Array.from({ length: 9 }, () => {
    const before = process.cpuUsage();
    readMachineReport(text);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return Math.min(...costs);
}

describeOverOpenData(`${INPUTS} damaged inputs (120000 with KNOWNGOOD_LONG=1)`, (data) => {
  const texts = data.files('hardware', /\.(?:txt|json)$/).map((path) => readFileSync(path, 'latin1'));

  it('reads every one without a crash, in time and in bounds', { timeout: LONG ? 3_600_000 : 60_000 }, () => {
    const next = stream(20_261_125);
    const slow: string[] = [];
    for (let n = 0; n < INPUTS; n += 1) {
      const text = mutated(texts[next(texts.length)] ?? '', texts[next(texts.length)] ?? '', next);
      const most = LEAST_MS + (MS_PER_MB * text.length) / MB;
      const start = performance.now();
      const reading = readMachineReport(text);
      // Looked at again when it took long by the clock; a pause of the machine is no fault of the reader.
      if (performance.now() - start > most && costOf(text) > most) slow.push(`input ${n}, ${text.length} characters`);
      expectSound(reading);
    }
    expect(slow).toEqual([]);
  });

  it('reads bytes that are no text of any encoding without a crash', { timeout: LONG ? 3_600_000 : 60_000 }, () => {
    const next = stream(7);
    for (let n = 0; n < (LONG ? 20_000 : 500); n += 1) {
      const bytes = Uint8Array.from(Buffer.from(texts[next(texts.length)] ?? '', 'latin1').subarray(0, 6000));
      for (let k = next(200); k > 0; k -= 1) bytes[next(bytes.length)] = next(256);
      expectSound(readBytes(bytes));
    }
  });
});

it.each(HARD)('a megabyte of %s is read in time', (_, text) => {
  const reading = readMachineReport(text);
  expect(costOf(text)).toBeLessThan(MS_PER_MB * Math.max(1, text.length / MB));
  saidOf(reading);
});
