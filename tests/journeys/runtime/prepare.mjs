import { setUp } from '../../../electron/launch/setUp.mjs';
import { prepareElectron } from '../../electronRuntime/prepare.mjs';
import { ensureDebianPackages } from '../../runner/debian.mjs';

/** Lays out the Electron for tests with all it needs; its program's path is the last line on standard output. */
const LIMIT_MS = 4 * 60_000;

for (const sentence of await ensureDebianPackages((text) => process.stderr.write(`${text}\n`), LIMIT_MS)) {
  process.stderr.write(`${sentence}\n`);
}
const { program, missing } = await prepareElectron(await setUp({ build: false }));
if (missing) process.stderr.write(`${missing}\n`);
else process.stdout.write(`${program}\n`);
process.exitCode = missing ? 1 : 0;
