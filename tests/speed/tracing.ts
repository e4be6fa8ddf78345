import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Figure } from './tracing/row.ts';
import { ROWS } from './tracing/rows.ts';

/**
 * The tracing benchmark: `node tests/speed/tracing.ts [--short] [--only TEXT]`. Prints every figure with its bar and
 * whether it is met; ends with 1 when one is missed. `--only` measures the rows whose name holds the text.
 */
const short = process.argv.includes('--short');
const only = process.argv.includes('--only') ? process.argv[process.argv.indexOf('--only') + 1] : undefined;
const verdict = ({ met }: Figure): string => (met === null ? 'shown' : met ? 'met' : 'missed');

let missed = 0;
for (const row of ROWS) {
  if (only !== undefined && !row.name.includes(only)) continue;
  const started = performance.now();
  const { figures, plots = [] } = await row.measure({ short });
  console.log(`\n${row.name} (${((performance.now() - started) / 1000).toFixed(1)} s)`);
  const width = Math.max(...figures.map(({ what }) => what.length));
  const figureWidth = Math.max(...figures.map(({ figure }) => figure.length));
  for (const each of figures) {
    console.log(
      `  ${each.what.padEnd(width)}  ${each.figure.padStart(figureWidth)}  ${each.bar.padEnd(8)}  ${verdict(each)}`,
    );
    if (each.met === false) missed++;
  }
  for (const { name, svg } of plots) {
    const folder = join('out', 'speed');
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${name}.svg`), svg);
    console.log(`  drawn: ${join(folder, `${name}.svg`)}`);
  }
}
console.log(missed === 0 ? '\nevery bar is met' : `\n${missed} missed`);
process.exitCode = missed === 0 ? 0 : 1;
