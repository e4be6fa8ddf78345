import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';

export type Gallery = {
  /** Address of one page: `bench`, `bench&far`, `keys&light=night`. */
  readonly page: (show: string) => string;
  readonly close: () => Promise<void>;
};

export const chromiumPath = (): string => execFileSync('which', ['chromium'], { encoding: 'utf8' }).trim();

/** Builds the gallery of controls once and serves it on a free loopback port. */
export async function openGallery(): Promise<Gallery> {
  const outDir = await mkdtemp(join(tmpdir(), 'kit-gallery-'));
  const shared = { root: import.meta.dirname, configFile: false, logLevel: 'error' } as const;
  await build({
    ...shared,
    build: { outDir, minify: false, rolldownOptions: { input: join(import.meta.dirname, 'gallery.html') } },
  });
  const server = await preview({ ...shared, build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
  const address = server.resolvedUrls?.local[0] ?? '';
  return {
    page: (show) => `${address}gallery.html?show=${show}`,
    close: async () => {
      await server.close();
      await rm(outDir, { recursive: true, force: true });
    },
  };
}
