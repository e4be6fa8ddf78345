import type { Page } from '@playwright/test';
import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { openFromStory } from './runtime/fromStory.ts';
import { expect, rough } from './runtime/journey.ts';
import { burst, scan } from './scanHands.ts';

const BADGE = 'K7R4TMX';
const dialog = (page: Page) => page.getByRole('dialog');

/** Types a new PIN for somebody, with the keeper's own where it is asked. */
async function setPin(page: Page, name: string, pin: string, own?: string): Promise<void> {
  await page.getByRole('button', { name: `PIN of ${name}` }).click();
  if (own !== undefined) await dialog(page).getByLabel('Your own PIN').fill(own);
  await dialog(page).getByLabel(`New PIN for ${name}`).fill(pin);
  await dialog(page).getByRole('button', { name: 'Set it' }).click();
}

async function typePin(page: Page, pin: string): Promise<void> {
  await page.getByLabel('PIN', { exact: true }).fill(pin);
  await page.getByRole('button', { name: 'Come in' }).click();
}

rough.describe.configure({ timeout: 240_000 });

rough(
  'people come in by badge and PIN, a wrong PIN waits, and a locked screen takes the outcome of the step under way',
  async () => {
    const app = await openFromStory('browser', 'traced');
    const { page } = app;
    try {
      await page.clock.install();
      await page.getByRole('button', { name: 'Bram Ostler' }).click();
      await page.getByRole('link', { name: 'Reckoning' }).click();
      await page.getByRole('button', { name: 'Shop settings' }).click();
      await setPin(page, 'Bram Ostler', '471');
      await expect(dialog(page).getByRole('alert')).toContainText('A PIN has 4 digits at least.');
      await dialog(page).getByLabel('New PIN for Bram Ostler').fill('47a1');
      await dialog(page).getByRole('button', { name: 'Set it' }).click();
      await expect(dialog(page).getByRole('alert')).toContainText('A PIN is digits alone.');
      await dialog(page).getByLabel('New PIN for Bram Ostler').fill('4711');
      await dialog(page).getByRole('button', { name: 'Set it' }).click();
      await expect(dialog(page).getByRole('listitem')).toHaveCount(12);
      await dialog(page).getByRole('button', { name: 'I have them on paper' }).click();
      await expect(page.getByText('Bram Ostler has a PIN.')).toBeVisible();
      await setPin(page, 'Mina Tidewell', '2468', '4711');
      await expect(page.getByText('Mina Tidewell has a PIN.')).toBeVisible();
      await page.getByLabel("Tag of Mina Tidewell's badge").fill(BADGE);
      await page.getByRole('button', { name: 'Make it the badge' }).first().click();
      await expect(page.getByText(/^Badge: /)).toBeVisible();
      expect(await accessibilityFaults(app)).toEqual([]);

      await page.getByRole('button', { name: 'Lock', exact: true }).click();
      await expect(page.getByRole('heading', { name: 'This screen is locked' })).toBeVisible();
      expect(await accessibilityFaults(app)).toEqual([]);
      await scan(page, BADGE, page.getByRole('radio', { name: 'Mina Tidewell', checked: true }));
      await typePin(page, '1357');
      await expect(page.getByRole('alert')).toContainText("That is not Mina Tidewell's PIN.");
      await typePin(page, '1357');
      await typePin(page, '2468');
      await expect(page.getByRole('alert')).toContainText(/has to wait \d second/);
      await expect(async () => {
        await typePin(page, '2468');
        await expect(page.getByRole('heading', { name: 'This screen is locked' })).toHaveCount(0, { timeout: 3000 });
      }).toPass({ timeout: 60_000 });
      await expect(page.getByRole('button', { name: 'Mina Tidewell', exact: true })).toBeVisible();

      // The other's badge, or none: Bram comes by his name.
      await page.getByRole('button', { name: 'Mina Tidewell', exact: true }).click();
      await page.getByRole('radiogroup', { name: 'Who comes' }).getByRole('radio', { name: 'Bram Ostler' }).click();
      await typePin(page, '4711');
      await expect(page.getByRole('button', { name: 'Bram Ostler', exact: true })).toBeVisible();
      await scan(page, 'F6C6KA5', page.getByText('Differs.'));
      await page.getByRole('button', { name: 'I did something else' }).click();
      await page.getByRole('textbox', { name: 'Find a step' }).fill('Reseat the memory until both ends latch');
      await dialog(page)
        .getByRole('button', { name: /^Take:/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Start', exact: true }).click();
      await page.getByRole('timer').waitFor();
      await page.getByRole('main').press('f');
      await dialog(page).getByRole('heading').waitFor();
      await page.clock.fastForward('06:00');
      await expect(dialog(page).getByText('Locked: this step takes its outcome, nothing else.')).toBeVisible();
      await expect(page.locator('body')).not.toHaveText(/£/, { useInnerText: true });
      expect(await accessibilityFaults(app)).toEqual([]);
      await burst(page, 'F6C6KA5');
      await page.keyboard.press('Escape');
      await expect(dialog(page).getByText('Locked: this step takes its outcome, nothing else.')).toBeVisible();
      await dialog(page)
        .getByRole('button', { name: /^1 ?it works|^it works/ })
        .click();
      await expect(page.getByRole('heading', { name: 'This screen is locked' })).toBeVisible();
      await typePin(page, '4711');
      await expect(page.getByRole('button', { name: 'Bram Ostler', exact: true })).toBeVisible();
      await expect(page.getByRole('timer')).toHaveCount(0);
    } finally {
      await app.close();
    }
  },
);
