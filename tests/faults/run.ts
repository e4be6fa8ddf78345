import { parseArgs } from 'node:util';
import { ATTACKS } from './attacks.ts';

/**
 * `npm run faults -- [--short] [--only TEXT]`: does every fault and attack to shops of its own and prints one table. Ends
 * with 1 when one was not survived. Needs strace and the right to mount a small disk.
 */
const { values } = parseArgs({ options: { short: { type: 'boolean', default: false }, only: { type: 'string' } } });
const chosen = ATTACKS.filter(({ name }) => values.only === undefined || name.includes(values.only));

const row = (name: string, tries: unknown, survived: unknown, lost: unknown, said: string) =>
  `${name.padEnd(42)}${[tries, survived, lost].map((figure) => String(figure).padStart(9)).join('')}  ${said}\n`;

process.stdout.write(row('fault or attack', 'tries', 'survived', 'lost', 'said'));
let lost = 0;
for (const { name, run } of chosen) {
  const outcome = await run({ short: values.short });
  lost += outcome.lost;
  process.stdout.write(row(name, outcome.tries, outcome.survived, outcome.lost, outcome.said.join(' | ')));
}
process.exitCode = lost > 0 || chosen.length === 0 ? 1 : 0;
