import type { Locator, Page } from '@playwright/test';
import { expect } from './runtime/journey.ts';

const SECONDS_BETWEEN_KEYS = 0.01;
const ENTER = { key: 'Enter', code: 'Enter', text: '\r', windowsVirtualKeyCode: 13 };

/**
 * The keys of one scan, each stamped with its time as the scanner's driver does: how busy this machine is must not make
 * a scan of it slower than a scanner types.
 * @param late How many ms after they were pressed a busy machine brings the second half of them.
 */
export async function burst(page: Page, tag: string, { late = 0 } = {}): Promise<void> {
  const wire = await page.context().newCDPSession(page);
  const start = Date.now() / 1000;
  const keys = [...[...tag].map((key) => ({ key, text: key, windowsVirtualKeyCode: key.charCodeAt(0) })), ENTER];
  const sent = keys.map((key, n) => ({ key, timestamp: start + n * SECONDS_BETWEEN_KEYS }));
  const bring = (some: typeof sent) =>
    Promise.all(
      some.flatMap(({ key, timestamp }) =>
        (['keyDown', 'keyUp'] as const).map((type) =>
          wire.send('Input.dispatchKeyEvent', { type, ...key, ...(type === 'keyUp' && { text: '' }), timestamp }),
        ),
      ),
    );
  const half = late === 0 ? sent.length : Math.ceil(sent.length / 2);
  await bring(sent.slice(0, half));
  await page.waitForTimeout(late);
  await bring(sent.slice(half));
  await wire.detach();
}

/**
 * As a hand scanner types: a burst of keys and Enter, whatever has the focus. A scan that came too slowly on a busy
 * machine is scanned again, as a person does until it is heard.
 * @param heard What is there once the scan was heard.
 */
export async function scan(page: Page, tag: string, heard: Locator): Promise<void> {
  await expect(async () => {
    await burst(page, tag);
    await expect(heard).toBeVisible({ timeout: 4000 });
  }).toPass({ timeout: 30_000 });
}
