import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { noteBundled } from './electron/shipped/noteBundled.ts';

/** The names of all shapes in `core`: they stand beside the rules that screens use too, and only the service asks them. */
const shapes = readdirSync('core', { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
  .flatMap((file) => [...readFileSync(join('core', file), 'utf8').matchAll(/^(?:export )?const (\w+Shapes?)\b/gm)])
  .flatMap(([, name]) => name ?? []);

export default defineConfig({
  root: 'renderer',
  // The page is served from the root of a scheme and of a port alike.
  base: './',
  publicDir: false,
  plugins: [react(), noteBundled('screens')],
  build: {
    outDir: '../dist/ui',
    emptyOutDir: true,
    // The content policy lets no font or script come as data.
    assetsInlineLimit: 0,
    target: 'chrome130',
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 1500,
    // Making a shape has no effect, so that one nobody asks, and zod with it, stays out of the page.
    rolldownOptions: { treeshake: { manualPureFunctions: ['z', 'personalShape', 'someOf', ...shapes] } },
  },
});
