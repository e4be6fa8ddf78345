import { renameSync, writeFileSync } from 'node:fs';
import { simulate } from './simulate.ts';

/** One start's machines in a process of its own: `node simulateOne.ts START TRUTHS MACHINES FILE`. */
const [start, truths, machines] = process.argv.slice(2, 5).map(Number) as [number, number, number];
const file = process.argv[5] as string;
const traced = simulate(start, truths, machines);
// Whole or not at all: a run that is broken off leaves no half file behind.
writeFileSync(`${file}.part`, JSON.stringify(traced));
renameSync(`${file}.part`, file);
