import { fillSheet } from './counterHands.ts';
import { expect, rough as test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test.describe.configure({ timeout: 120_000 });

test('a limit of fifteen digits is said at its field, and the Counter goes on: then, and when it is loaded again', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await fillSheet(page);
  const limit = page.getByRole('textbox', { name: 'Nothing above' });
  for (const figure of ['999999999999999', '447700900444']) {
    await limit.fill(figure);
    await limit.press('Tab');
    await expect(page.getByText(/^No amount goes beyond/)).toBeVisible();
    await expect(page.getByText(/^Still open: .*spending limit/)).toBeVisible();
  }
  await page.waitForTimeout(1500);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Edda Lindqvist');
  await limit.fill('180');
  await limit.press('Tab');
  await expect(page.getByText(/^No amount goes beyond/)).toBeHidden();
  await expect(page.getByText(/^Still open: signature$/)).toBeVisible();
});

test('a kept draft that cannot be shown takes no room down, and can be dropped for a new sheet', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await page.route(/loadDraft$/, (route) => route.fulfill({ json: { json: JSON.stringify({ owner: null }) } }));
  await page.getByRole('link', { name: 'Counter' }).click();
  await expect(page.getByText('This room could not be shown.')).toBeVisible();
  await page.getByRole('link', { name: 'Wall' }).click();
  await expect(page.getByRole('button', { name: 'Put a part up' })).toBeVisible();
  await page.getByRole('link', { name: 'Counter' }).click();
  await page.getByRole('button', { name: /^Begin a new sheet/ }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Edda Lindqvist');
});

test('a line that cannot be shown leaves all others to be used', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await page.route(/loadDraft$/, (route) => route.fulfill({ json: { json: JSON.stringify({ cameAlong: 'a lead' }) } }));
  await page.getByRole('link', { name: 'Counter' }).click();
  await expect(page.getByText('This line could not be shown.').first()).toBeVisible();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Edda Lindqvist');
  await expect(page.getByRole('textbox', { name: 'Nothing above' })).toBeVisible();
});
