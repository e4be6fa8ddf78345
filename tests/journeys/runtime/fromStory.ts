import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runDemo } from '../../../electron/cli/demo/runDemo.ts';
import type { Chapter } from '../../../electron/cli/demo/tellStory.ts';
import { type OpenedApp, openInBrowser, openInElectron } from './openApp.ts';

/** The demo's shop with its story told up to a chapter, opened where a journey runs. */
export async function openFromStory(where: OpenedApp['where'], until: Chapter): Promise<OpenedApp> {
  const config = mkdtempSync(join(tmpdir(), 'knowngood-story-'));
  const folder = join(config, 'knowngood');
  await runDemo({ out: null, machine: null, print: () => undefined, folder, until });
  const place = { data: join(folder, 'shop'), config };
  const app = await (where === 'electron' ? openInElectron(place) : openInBrowser(place));
  return {
    ...app,
    close: async () => {
      await app.close();
      rmSync(config, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
    },
  };
}
