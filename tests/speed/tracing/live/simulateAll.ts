import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, globSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Traced } from './simulate.ts';
import { STARTS } from './starts.ts';

export type Size = { readonly truths: number; readonly machines: number; readonly processes: number };

const house = fileURLToPath(new URL('../../../../', import.meta.url));
const worker = fileURLToPath(new URL('./simulateOne.ts', import.meta.url));

/**
 * Traces all machines, start by start in processes of their own. What is finished stays in `out/speed`, so that a run
 * that was broken off goes on where it was; files of another state of the code are never taken.
 */
export async function simulateAll({ truths, machines, processes }: Size): Promise<readonly Traced[]> {
  const folder = join('out', 'speed', `traced-${truths}x${machines}-${codeNow()}`);
  mkdirSync(folder, { recursive: true });
  const files = STARTS.map((_, start) => join(folder, `${start}.json`));
  const left = [...files.keys()].filter((start) => !existsSync(files[start] as string));
  const work = async (): Promise<void> => {
    for (let start = left.shift(); start !== undefined; start = left.shift())
      await runOne([start, truths, machines].map(String), files[start] as string);
  };
  await Promise.all(Array.from({ length: processes }, work));
  return files
    .flatMap((file) => JSON.parse(readFileSync(file, 'utf8')) as readonly Traced[])
    .toSorted((a, b) => a.truth - b.truth || a.machine - b.machine);
}

function runOne(numbers: readonly string[], file: string): Promise<void> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, [worker, ...numbers, file], { stdio: 'inherit' });
    child.on('error', failed);
    child.on('exit', (code) => (code === 0 ? done() : failed(new Error(`start ${numbers[0]} ended with ${code}`))));
  });
}

/** Names the state of all that the result depends on. */
function codeNow(): string {
  const hash = createHash('sha256');
  const files = globSync(
    ['assets/fault-model/*.json', 'core/**/*.ts', 'tests/speed/tracing/live/*.ts', 'tests/builders/tracingCase.ts'],
    {
      cwd: house,
    },
  );
  for (const file of files.toSorted()) hash.update(file).update(readFileSync(join(house, file)));
  return hash.digest('hex').slice(0, 12);
}
