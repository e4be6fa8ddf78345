import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, type ElectronApplication } from '@playwright/test';
import { asRoot } from './house.ts';

const heldApp = join(dirname(fileURLToPath(import.meta.url)), 'heldApp');

/** Switches for Electron in a test: under Xvfb the graphics process fails, and a page that waits for it can hang. */
export const SWITCHES: readonly string[] = ['--disable-gpu', ...(asRoot ? ['--no-sandbox'] : [])];

/**
 * Starts the app of a folder in the Electron for tests. Needs a display (xvfb-run).
 * @param env What is put over this process's own environment; `undefined` takes a variable away.
 */
export async function launchElectron(
  folder: string,
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): Promise<ElectronApplication> {
  const executablePath = process.env.KNOWNGOOD_TEST_ELECTRON;
  if (!executablePath) throw new Error('No Electron for tests: node tests/journeys/runtime/prepare.mjs lays it out');
  const all = Object.entries({ ...process.env, ...env, KNOWNGOOD_TEST_APP: folder });
  return _electron.launch({
    executablePath,
    args: [heldApp, ...SWITCHES, ...args],
    env: Object.fromEntries(all.filter((pair): pair is [string, string] => pair[1] !== undefined)),
  });
}
