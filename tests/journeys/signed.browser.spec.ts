import type { Page } from '@playwright/test';
import { fillSheet, OWNER, signByKeys, takeIn } from './counterHands.ts';
import { keptPaper } from './keptPaper.ts';
import { expect, rough as test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test.describe.configure({ timeout: 180_000 });

const sideBySide = (page: Page) => {
  const dialog = page.getByRole('dialog', { name: 'What was signed is not what would be issued' });
  return {
    dialog,
    signed: dialog.getByRole('region', { name: 'As it was signed' }),
    now: dialog.getByRole('region', { name: 'As it would be issued now' }),
    back: () => dialog.getByRole('button', { name: 'Back, to sign anew' }).click(),
  };
};

test('signed at a limit of £180, then written over with £500: both are shown, nothing is issued; signed anew it is', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await fillSheet(page);
  await expect(page.getByRole('region', { name: 'The paper it becomes' }).getByText('£180.00').first()).toBeVisible();
  await signByKeys(page);
  await page.getByRole('textbox', { name: 'Spend no more than' }).fill('500');
  await page.getByRole('button', { name: /Sign, print/ }).click();
  const { dialog, signed, now, back } = sideBySide(page);
  await expect(signed.getByText('£180.00').first()).toBeVisible();
  await expect(now.getByText('£500.00').first()).toBeVisible();
  await expect(now.getByText('£180.00')).toHaveCount(0);
  await back();
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('region', { name: 'Papers' })).toBeHidden();
  await page.getByRole('textbox', { name: 'Name in place of a signature' }).fill(OWNER);
  await page.getByRole('button', { name: /Sign, print/ }).click();
  await page.getByRole('region', { name: 'Papers' }).waitFor({ timeout: 60_000 });
  const receipt = await keptPaper(app, /^Intake receipt IR-/);
  expect(receipt.aloud).toMatch(/£500\.00/);
  expect(receipt.aloud).not.toMatch(/£180\.00/);
});

test('more that was told after the sheet was signed, with the figures it makes, is not issued under that signature', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await fillSheet(page);
  await signByKeys(page);
  await page.getByRole('button', { name: 'The screen says there is no signal' }).click();
  await page.getByRole('button', { name: /Sign, print/ }).click();
  const { signed, now } = sideBySide(page);
  await expect(signed.getByText(/there is no signal/)).toHaveCount(0);
  await expect(now.getByText(/there is no signal/).first()).toBeVisible();
  await expect(page.getByRole('region', { name: 'Papers' })).toBeHidden();
});

test('what no paper says is bound too: small parts written over after the sheet was signed are named, and not taken', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await fillSheet(page);
  await signByKeys(page);
  await page.getByRole('textbox', { name: 'Small parts in it up to' }).fill('90');
  await page.getByRole('button', { name: /Sign, print/ }).click();
  const { dialog } = sideBySide(page);
  await expect(dialog.getByText('Said otherwise: up to how much small parts go in.')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Papers' })).toBeHidden();
});

test('a hand-over that was signed before something was booked is not carried out', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  await page.getByRole('radio', { name: 'declined', exact: true }).click();
  await page.getByRole('button', { name: 'Return it unrepaired' }).click();
  await page.getByRole('toolbar', { name: 'Given back' }).getByRole('button', { name: 'mains cord' }).click();
  const handOver = page.getByRole('group', { name: /^Hand-over/ });
  await handOver.getByRole('button', { name: 'Type the name instead' }).click();
  await handOver.getByRole('textbox', { name: 'Name in place of a signature' }).fill(OWNER);
  await page.getByRole('button', { name: 'Add a charge or a discount' }).click();
  await page.getByRole('radio', { name: 'given for nothing' }).click();
  await page.getByRole('textbox', { name: 'What is given' }).fill('a cable tie');
  const worth = page.getByRole('textbox', { name: 'What it is worth' });
  await worth.fill('2');
  await worth.press('Tab');
  await page.getByRole('button', { name: 'Record it' }).click();
  await expect(page.getByText(/a cable tie, given/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Hand over' }).click();
  const { signed, now, back } = sideBySide(page);
  await expect(now.getByText(/a cable tie/).first()).toBeVisible();
  await expect(signed.getByText(/a cable tie/)).toHaveCount(0);
  await back();
  await expect(page.getByText(/^Gone home/)).toHaveCount(0);
});
