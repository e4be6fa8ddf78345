import { defineConfig } from 'rolldown';

/** What the service loads from node_modules at run time: native code, and packages that read files of their own. */
const KEPT_OUTSIDE = ['better-sqlite3', 'pdfkit', 'bwip-js', /^source-sans/, /^source-serif/];

export default defineConfig([
  {
    input: 'electron/service/main.ts',
    platform: 'node',
    external: KEPT_OUTSIDE,
    output: { file: 'dist/service.mjs', format: 'esm' },
  },
  {
    input: 'electron/service/computing/thread.ts',
    platform: 'node',
    output: { file: 'dist/computing.mjs', format: 'esm' },
  },
  {
    input: 'electron/service/backups/thread.ts',
    platform: 'node',
    external: KEPT_OUTSIDE,
    output: { file: 'dist/backups.mjs', format: 'esm' },
  },
  {
    input: 'electron/main/main.ts',
    platform: 'node',
    external: ['electron'],
    output: { file: 'dist/main.cjs', format: 'cjs' },
  },
  {
    input: 'electron/preload/preload.ts',
    platform: 'browser',
    external: ['electron'],
    output: { file: 'dist/preload.cjs', format: 'cjs' },
  },
]);
