import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { contentHash } from './contentHash.mjs';
import { inHouse } from './house.mjs';
import { runTool } from './runTool.mjs';
import { SetUpError } from './SetUpError.mjs';

/** Lies inside node_modules, which `npm ci` wipes first: a broken install can never be taken for a good one. */
const stamp = inHouse('node_modules', '.knowngood-packages');

/** npm as a program and its first arguments; under npm itself, the very npm that runs us. */
export function npm() {
  const running = process.env.npm_execpath;
  if (running && /npm-cli\.[cm]?js$/.test(running))
    return { command: process.execPath, first: [running], shell: false };
  return { command: 'npm', first: [], shell: process.platform === 'win32' };
}

/** Installs the packages of the lock file unless the last good install was of this very lock file and system. */
export async function ensurePackages(say) {
  const wanted = `${contentHash([inHouse('package-lock.json')])} ${process.platform}-${process.arch}\n`;
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  say('Installing the packages of the lock file (npm ci) …');
  const { command, first, shell } = npm();
  // Only standard error: the command line's own output must stay clean.
  const { code, failed } = await runTool(command, [...first, 'ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    stdio: ['ignore', process.stderr.fd, process.stderr.fd],
    shell,
  });
  if (failed) throw new SetUpError(`npm could not be started (${failed.message}). It comes with Node.`);
  if (code !== 0) {
    throw new SetUpError(`npm ci ended with code ${code}; what npm says stands above. The network is needed once.`);
  }
  writeFileSync(stamp, wanted);
}
