import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { standardModel } from '../../../core/tracing/live/model/standardModel.ts';
import { play } from './play.ts';
import { begun, type Progress, tallyLines, zProgress } from './tally.ts';

/**
 * The referee over many log positions: `npm run referee -- [--states N] [--seed S] [--resume FILE]`. 20,000 states where
 * nothing is said. Prints each kind of breach that the tracing leaves open with its first place; ends with 1 when there
 * is one. With `--resume`, what was found so far is kept in FILE, and a run that was cut off goes on from there.
 */
const { values } = parseArgs({
  options: { states: { type: 'string' }, seed: { type: 'string' }, resume: { type: 'string' } },
});

/** Milliseconds between two savings: a run that is cut off loses no more. */
const SAVED_EVERY = 10_000;

const states = wholeOf('states', values.states, 20_000);
const seed = wholeOf('seed', values.seed, 1);
const file = values.resume;
const progress = file !== undefined && existsSync(file) ? keptIn(file, seed) : begun(seed);

let saved = performance.now();
play(standardModel(), progress, states, () => {
  if (performance.now() - saved > SAVED_EVERY) save();
});
save();
for (const line of tallyLines(progress)) console.log(line);
process.exitCode = progress.breaches === 0 ? 0 : 1;

function save(): void {
  saved = performance.now();
  if (file === undefined) return;
  writeFileSync(`${file}.new`, JSON.stringify(progress));
  renameSync(`${file}.new`, file);
}

function keptIn(path: string, wanted: number): Progress {
  const kept = zProgress.parse(JSON.parse(readFileSync(path, 'utf8')));
  if (kept.seed !== wanted) throw new RangeError(`${path} was begun with seed ${kept.seed}, not ${wanted}`);
  return kept;
}

/** A whole number by its name. @throws {RangeError} For what is none. */
function wholeOf(name: string, text: string | undefined, usual: number): number {
  if (text === undefined) return usual;
  if (!/^\d{1,9}$/.test(text)) throw new RangeError(`--${name} ${text} is no whole number`);
  return Number(text);
}
