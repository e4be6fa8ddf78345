import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Extent, Figure } from './tracing/row.ts';
import { ROWS } from './tracing/rows.ts';

/**
 * The tracing benchmark: `node tests/speed/tracing.ts [--short] [--only TEXT] [--truths N] [--machines N]
 * [--processes N]`. Prints every figure with its bar and whether it is met; ends with 1 when one is missed. `--only`
 * measures the rows whose name holds the text; the numbers are for the full model (20 × 500 in 2 processes).
 */
const { values } = parseArgs({
  options: {
    short: { type: 'boolean', default: false },
    only: { type: 'string' },
    truths: { type: 'string' },
    machines: { type: 'string' },
    processes: { type: 'string' },
  },
});
const extent: Extent = {
  short: values.short,
  ...numberOf('truths', values.truths),
  ...numberOf('machines', values.machines),
  ...numberOf('processes', values.processes),
};

/** A count of at least one by its name, or nothing where none was given. */
function numberOf(name: string, text: string | undefined): { readonly [name: string]: number } {
  if (text === undefined) return {};
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new RangeError(`--${name} ${text} is no count`);
  return { [name]: Number(text) };
}

const verdict = ({ met }: Figure): string => (met === null ? 'shown' : met ? 'met' : 'missed');

let missed = 0;
for (const row of ROWS) {
  if (values.only !== undefined && !row.name.includes(values.only)) continue;
  const started = performance.now();
  const { figures, plots = [] } = await row.measure(extent);
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
