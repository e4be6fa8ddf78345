import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { expect, test } from './runtime/journey.ts';
import { openInBrowser, openInElectron } from './runtime/openApp.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test('a fresh shop is set up, and its day line stands', async ({ app }) => {
  await setUpShop(app.page);
  await expect(app.page.getByRole('navigation')).toBeVisible();
  expect(await accessibilityFaults(app)).toEqual([]);
});

test('the shop is there again after the app was closed in order', async ({ app, where }) => {
  await setUpShop(app.page);
  await expect(app.page.getByRole('navigation')).toBeVisible();
  await app.end();
  const again = await (where === 'electron' ? openInElectron : openInBrowser)({ data: app.data, config: app.config });
  await expect(again.page.getByRole('navigation').or(again.page.getByRole('button', { name: 'Ivo' }))).toBeVisible();
  await expect(again.page.getByLabel('Name of the shop')).toHaveCount(0);
  expect(again.complaints).toEqual([]);
  await again.close();
});
