import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { inHouse } from './house.mjs';
import { runTool } from './runTool.mjs';

/** A download of some 120 MB on a slow line; without any network it fails at once. */
const LIMIT_MS = 5 * 60_000;

const PROGRAM =
  {
    darwin: join('Electron.app', 'Contents', 'MacOS', 'Electron'),
    win32: 'electron.exe',
  }[process.platform] ?? 'electron';

/** Loading the `electron` package would start a download by itself, so its folder is only looked into. */
const where = () =>
  join(process.env.ELECTRON_OVERRIDE_DIST_PATH ?? inHouse('node_modules', 'electron', 'dist'), PROGRAM);

/**
 * The Electron program: as it lies there, else fetched by the package's own installer.
 * @returns its path, or `undefined` where it cannot be had.
 */
export async function electronBinary({ node, env }, say) {
  if (existsSync(where())) return where();
  if (process.env.ELECTRON_OVERRIDE_DIST_PATH) {
    say(`ELECTRON_OVERRIDE_DIST_PATH is set, but there is no ${where()}.`);
    return undefined;
  }
  say(`Electron's program is not here yet; fetching it (once, ${LIMIT_MS / 60_000} minutes at most) …`);
  const installer = inHouse('node_modules', 'electron', 'install.js');
  // What it prints when it fails is a stack of its own; the launcher says in words what came of it.
  await runTool(node, [installer], { env, stdio: 'ignore', limitMs: LIMIT_MS });
  return existsSync(where()) ? where() : undefined;
}
