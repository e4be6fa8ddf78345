import { test as base, expect } from '@playwright/test';
import { type OpenedApp, openInBrowser, openInElectron } from './openApp.ts';

/**
 * A journey: written once, run in the Electron window and in a browser over loopback.
 * `app` is opened on a fresh data folder, and a complaint on the page's console fails the journey.
 */
export const test = base.extend<{ app: OpenedApp }, { where: OpenedApp['where'] }>({
  where: ['browser', { option: true, scope: 'worker' }],
  app: async ({ where }, use) => {
    const app = await (where === 'electron' ? openInElectron() : openInBrowser());
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
