import type { Locator, Page } from '@playwright/test';
import { expect } from './runtime/journey.ts';

/**
 * As a hand scanner types: a burst of keys and Enter, whatever has the focus. A scan that came too slowly on a busy
 * machine is scanned again, as a person does until it is heard.
 * @param heard What is there once the scan was heard.
 */
export async function scan(page: Page, tag: string, heard: Locator): Promise<void> {
  await expect(async () => {
    // Sent without waiting for each other: the pauses between keys are what tells a scan from a person.
    await Promise.all([...tag, 'Enter'].flatMap((key) => [page.keyboard.down(key), page.keyboard.up(key)]));
    await expect(heard).toBeVisible({ timeout: 4000 });
  }).toPass({ timeout: 30_000 });
}
