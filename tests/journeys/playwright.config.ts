import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';

const here = dirname(fileURLToPath(import.meta.url));

/** `npm test` names the Electron for tests; started by hand, it is laid out first. Empty where there is none. */
function testElectron(): string {
  const prepared = spawnSync('node', [join(here, 'runtime', 'prepare.mjs')], { encoding: 'utf8' });
  return prepared.status === 0 ? (prepared.stdout.trim().split('\n').at(-1) ?? '') : '';
}

process.env.KNOWNGOOD_TEST_ELECTRON ??= testElectron();
// Two services at once share two cores with two browsers: no journey waits for a look ahead, and none computes one.
process.env.KNOWNGOOD_QUIET_SECONDS ??= '3600';

export default defineConfig<object, { where: 'electron' | 'browser' }>({
  testDir: '.',
  outputDir: '../../node_modules/.cache/knowngood-journeys',
  fullyParallel: true,
  // One at a time: a window and its service, with what it computes beside, take both cores.
  workers: 1,
  timeout: 60_000,
  // A scan is told by the time between its keys: on a machine with no core to spare the keys themselves come late.
  retries: 1,
  expect: { timeout: 15_000 },
  reporter: 'list',
  projects: [
    ...(process.env.KNOWNGOOD_TEST_ELECTRON
      ? [{ name: 'electron', use: { where: 'electron' as const }, testIgnore: '**/*.browser.spec.ts' }]
      : []),
    { name: 'browser', use: { where: 'browser' as const }, testIgnore: '**/*.electron.spec.ts' },
  ],
});
