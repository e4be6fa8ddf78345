import { defineConfig } from 'rolldown';
import { KEPT_OUTSIDE } from './electron/shipped/keptOutside.ts';
import { noteBundled } from './electron/shipped/noteBundled.ts';

/** They and their files by path. */
const external = KEPT_OUTSIDE.map((name) => new RegExp(`^${name}(/|$)`));

export default defineConfig([
  {
    input: 'electron/service/main.ts',
    platform: 'node',
    external,
    plugins: [noteBundled('service')],
    output: { file: 'dist/service.mjs', format: 'esm' },
  },
  {
    input: 'electron/service/computing/thread.ts',
    platform: 'node',
    plugins: [noteBundled('computing')],
    output: { file: 'dist/computing.mjs', format: 'esm' },
  },
  {
    input: 'electron/service/backups/thread.ts',
    platform: 'node',
    external,
    plugins: [noteBundled('backups')],
    output: { file: 'dist/backups.mjs', format: 'esm' },
  },
  {
    input: 'electron/main/main.ts',
    platform: 'node',
    external: ['electron'],
    plugins: [noteBundled('windows')],
    output: { file: 'dist/main.cjs', format: 'cjs' },
  },
  {
    input: 'electron/preload/preload.ts',
    platform: 'browser',
    external: ['electron'],
    plugins: [noteBundled('bridge')],
    output: { file: 'dist/preload.cjs', format: 'cjs' },
  },
  // The command line runs from its sources: bundled only to note what it loads.
  {
    input: 'electron/cli/main.ts',
    platform: 'node',
    external,
    plugins: [noteBundled('command-line')],
    output: { file: 'dist/command-line.mjs', format: 'esm', codeSplitting: false },
  },
]);
