import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'renderer',
  // The page is served from the root of a scheme and of a port alike.
  base: './',
  publicDir: false,
  plugins: [react()],
  build: {
    outDir: '../dist/ui',
    emptyOutDir: true,
    // The content policy lets no font or script come as data.
    assetsInlineLimit: 0,
    target: 'chrome130',
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 1500,
  },
});
