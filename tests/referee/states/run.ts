import { fork } from 'node:child_process';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { standardModel } from '../../../core/tracing/live/loading/standardModel.ts';
import { planned } from './planned.ts';
import { play } from './play.ts';
import { begun, type Progress, type Share, tallyLines, together, zProgress } from './tally.ts';
import { walk } from './walk.ts';

/**
 * The referee over many log positions: `npm run referee -- [--states N] [--seed S] [--planned] [--processes P]
 * [--resume FILE]`. 20,000 states in one process where nothing is said. Prints each sentence that the tracing leaves open
 * to be broken with its first place; ends with 1 when there is one. `--planned` plays the machines as the planner
 * proposes and judges what is proposed and said. With `--resume`, what was found so far is kept in FILE (FILE.1, FILE.2,
 * … for several processes), and a run that was cut off goes on from there.
 */
const { values } = parseArgs({
  options: {
    states: { type: 'string' },
    seed: { type: 'string' },
    processes: { type: 'string' },
    resume: { type: 'string' },
    planned: { type: 'boolean', default: false },
  },
});

/** Milliseconds between two savings: a run that is cut off loses no more. */
const SAVED_EVERY = 10_000;

const states = wholeOf('states', values.states, 20_000);
const seed = wholeOf('seed', values.seed, 1);
const processes = Math.max(1, wholeOf('processes', values.processes, 1));

/** The share of the machines that this process has been given by the one that began it. */
const given = process.env.REFEREE_SHARE;
if (given !== undefined) process.send?.(runOne({ at: Number(given), of: processes }));
else {
  const progress = processes === 1 ? runOne({ at: 0, of: 1 }) : together(await Promise.all(shares()));
  for (const line of tallyLines(progress)) console.log(line);
  process.exitCode = progress.breaches === 0 ? 0 : 1;
}

function shares(): readonly Promise<Progress>[] {
  return Array.from({ length: processes }, (_, at) => {
    const env = { ...process.env, REFEREE_SHARE: String(at) };
    const child = fork(fileURLToPath(import.meta.url), process.argv.slice(2), { env });
    return new Promise<Progress>((found, failed) => {
      child.once('message', (told) => found(zProgress.parse(told)));
      child.once('exit', (code) =>
        failed(new Error(`process ${at + 1} ended with ${code} before it had found anything`)),
      );
    });
  });
}

function runOne(share: Share): Progress {
  const kept = values.resume === undefined || share.of === 1 ? values.resume : `${values.resume}.${share.at + 1}`;
  const progress = kept !== undefined && existsSync(kept) ? keptIn(kept, share) : begun(seed, share);
  let saved = performance.now();
  const save = () => {
    saved = performance.now();
    if (kept === undefined) return;
    writeFileSync(`${kept}.new`, JSON.stringify(progress));
    renameSync(`${kept}.new`, kept);
  };
  play(standardModel(), progress, Math.ceil(states / share.of), values.planned ? planned : walk, () => {
    if (performance.now() - saved > SAVED_EVERY) save();
  });
  save();
  return progress;
}

/** @throws {RangeError} When the file is of another run: its figures and this run’s must not be mixed. */
function keptIn(path: string, share: Share): Progress {
  const kept = zProgress.parse(JSON.parse(readFileSync(path, 'utf8')));
  if (kept.seed !== seed || kept.share.at !== share.at || kept.share.of !== share.of) {
    throw new RangeError(`${path} was begun with another seed or another number of processes`);
  }
  return kept;
}

/** A whole number by its name. @throws {RangeError} For what is none. */
function wholeOf(name: string, text: string | undefined, usual: number): number {
  if (text === undefined) return usual;
  if (!/^\d{1,9}$/.test(text)) throw new RangeError(`--${name} ${text} is no whole number`);
  return Number(text);
}
