import { readFileSync } from 'node:fs';
import { readText } from '../../core/readings/readText.ts';
import { findOpenData } from '../openData.ts';

/**
 * How fast dmidecode text is read on one core: `node tests/speed/readings.ts [--short]`. Exit code 1 under the floor.
 * The open dumps one by one, as a shop reads them, and all in one text. Each figure is the fastest of its rounds: what
 * the reader needs, not what else the machine was busy with.
 */
const FLOOR = 20;
const short = process.argv.includes('--short');
const data = findOpenData();
if (!data) {
  console.log('Skipped, the open data is not here (see the README): how fast dmidecode text is read');
  process.exit(0);
}
const texts = data.files('hardware', /^dmi-/).map((path) => readFileSync(path, 'latin1'));
const bytes = texts.reduce((sum, text) => sum + text.length, 0);
const [rounds, times] = short ? [3, 4] : [9, 20];

const fastest = (work: () => void): number =>
  Math.min(
    ...Array.from({ length: rounds }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }),
  );

const each = fastest(() => {
  for (let n = 0; n < times; n += 1) for (const text of texts) readText(text);
});
const one = Array.from({ length: times }, () => texts.join('\n')).join('\n');
const together = fastest(() => readText(one));
const rate = (ms: number) => (bytes * times) / 1e6 / (ms / 1000);
console.log(`${texts.length} dumps, ${bytes} bytes, ${times} times over, fastest of ${rounds} rounds`);
console.log(`one by one: ${rate(each).toFixed(1)} MB/s`);
console.log(`in one text: ${rate(together).toFixed(1)} MB/s`);
if (Math.min(rate(each), rate(together)) < FLOOR) {
  console.log(`under the floor of ${FLOOR} MB/s`);
  process.exitCode = 1;
}
