import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { contentHash } from './contentHash.mjs';
import { built, inHouse } from './house.mjs';
import { node24, toolEnv } from './node24.mjs';
import { runTool } from './runTool.mjs';
import { SetUpError } from './SetUpError.mjs';

const stamp = join(built.folder, '.knowngood-built');
const SOURCES = [
  'assets',
  'core',
  'db',
  'electron',
  'renderer',
  'package-lock.json',
  'package.json',
  'tsconfig.json',
  'rolldown.config.ts',
  'vite.config.ts',
];

/** Tests are not built, and the command line runs from its sources. */
const isBuilt = (name) => !/\.test\.tsx?$/.test(name) && !name.startsWith('electron/cli/');

/**
 * Builds unless the last good build was of these very sources.
 * @param options `anew` builds in any case.
 */
export async function ensureBuilt(say, { anew = false } = {}) {
  const wanted = contentHash(
    SOURCES.map((name) => inHouse(name)),
    isBuilt,
  );
  if (!anew && existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  say('Building …');
  rmSync(stamp, { force: true });
  const node = node24();
  const { code } = await runTool(node, [inHouse('electron', 'launch', 'build.mjs')], {
    env: toolEnv(node),
    stdio: ['ignore', process.stderr.fd, process.stderr.fd],
  });
  if (code !== 0) throw new SetUpError(`the build ended with code ${code}; what it says stands above.`);
  writeFileSync(stamp, wanted);
}
