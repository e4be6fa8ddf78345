import { test as base, expect } from '@playwright/test';
import type { Chapter } from '../../../electron/cli/demo/tellStory.ts';
import { openFromStory } from './fromStory.ts';
import { type OpenedApp, openInBrowser, openInElectron } from './openApp.ts';

/**
 * A journey: written once, run in the Electron window and in a browser over loopback.
 * `app` is opened on a fresh data folder, or on the demo's shop told up to the chapter in `story`; a complaint on the
 * page's console fails the journey.
 */
export const test = base.extend<{ app: OpenedApp; story: Chapter | 'not begun' }, { where: OpenedApp['where'] }>({
  where: ['browser', { option: true, scope: 'worker' }],
  story: ['not begun', { option: true }],
  app: async ({ where, story }, use) => {
    const fresh = where === 'electron' ? openInElectron : openInBrowser;
    const app = await (story === 'not begun' ? fresh() : openFromStory(where, story));
    try {
      await use(app);
      expect(app.complaints, 'complaints on the page’s console').toEqual([]);
    } finally {
      await app.close();
    }
  },
});

/** The same, for journeys that make the page complain on purpose. */
export const rough = base.extend<{ app: OpenedApp }, { where: OpenedApp['where'] }>({
  where: ['browser', { option: true, scope: 'worker' }],
  app: async ({ where }, use) => {
    // Chromium shows a made-up camera and microphone: what matters is whether they are allowed.
    const switches = ['--use-fake-device-for-media-stream'];
    const app = await (where === 'electron' ? openInElectron({ switches }) : openInBrowser({ switches }));
    try {
      await use(app);
    } finally {
      await app.close();
    }
  },
});

export { expect };
