import type { Page } from '@playwright/test';
import { beginStep, lookInside } from './benchHands.ts';
import { fillSheet, OWNER, signByKeys, takeIn } from './counterHands.ts';
import { keptPaper } from './keptPaper.ts';
import { expect, test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test.describe.configure({ timeout: 150_000 });

const record = (page: Page) => page.getByRole('group', { name: /^Whose, and what/ });

test('a wrong number, a collector and what the machine is are put right, and the receipt is issued anew', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  const row = record(page);
  await row.getByRole('button', { name: 'Put the owner right' }).click();
  const owner = row.getByRole('form', { name: 'Put the owner right' });
  await owner.getByRole('textbox', { name: 'Phone' }).fill('01632 960 176');
  await owner.getByRole('textbox', { name: /collect/ }).fill('Bo Lindqvist');
  await owner.getByRole('radio', { name: OWNER }).click();
  await owner.getByRole('radio', { name: 'by phone' }).click();
  await owner.getByRole('button', { name: /^Record it/ }).click();
  await expect(row.getByText(`Put right`, { exact: false })).toContainText(`by the word of ${OWNER}`);
  await row.getByRole('button', { name: 'Put the machine right' }).click();
  const machine = row.getByRole('form', { name: 'Put the machine right' });
  await machine.getByRole('textbox', { name: 'What it is' }).fill('desktop PC, big tower');
  await machine.getByRole('button', { name: /^Record it/ }).click();
  await machine.waitFor({ state: 'detached' });
  const receipt = await keptPaper(app, /^Intake receipt IR-\d{4}-0003/);
  expect(receipt.aloud).toMatch(/01632 960 176/);
  expect(receipt.aloud).toMatch(/Bo Lindqvist/);
  expect(receipt.aloud).toMatch(/big tower/);
});

test('taken in by mistake it is cancelled without a fee; while it is here it is not offered again', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  await page.getByRole('link', { name: 'Counter' }).click();
  await page.getByRole('textbox', { name: 'Phone' }).fill('01632 960 175');
  await page.getByRole('textbox', { name: 'Mail' }).focus();
  await page.getByRole('button', { name: 'It is the same person' }).click();
  await expect(page.getByText(/^It is here already: desktop PC/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^The same machine/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Open its job' }).click();
  const row = record(page);
  await row.getByRole('button', { name: 'It was taken in by mistake' }).click();
  await row.getByRole('textbox', { name: 'What the mistake was' }).fill('Written twice.');
  await row.getByRole('button', { name: 'Cancel the taking-in' }).click();
  await expect(page.getByText(/^Gone home/).first()).toBeVisible();
  await expect(row.getByText(/^Taken in by mistake; cancelled/)).toBeVisible();
  await page.getByRole('link', { name: 'Counter' }).click();
  await expect(page.getByRole('button', { name: /^The same machine/ })).toBeVisible();
});

test('a payment written down wrongly is put right, and the fee waived with its reason', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  const costs = page.getByRole('group', { name: /^What it costs/ });
  await costs.getByRole('button', { name: 'Take a payment' }).click();
  const deposit = costs.getByRole('textbox', { name: 'Deposit' });
  await deposit.fill('50');
  await deposit.press('Tab');
  await costs.getByRole('radio', { name: 'in cash' }).click();
  await costs.getByRole('button', { name: 'It was paid' }).click();
  await costs.getByRole('button', { name: /^Put right: £50/ }).click();
  const right = costs.getByRole('form', { name: 'Put it right' });
  const was = right.getByRole('textbox', { name: /^What was really paid/ });
  await was.fill('40');
  await was.press('Tab');
  await right.getByRole('textbox', { name: 'What was wrong' }).fill('It was two twenties.');
  await right.getByRole('button', { name: 'Write it so' }).click();
  await expect(costs.getByText(/written down wrongly: It was two twenties/)).toBeVisible();
  await expect(costs.getByText(/£40.00 was paid/)).toBeVisible();
  await costs.getByRole('button', { name: 'Waive the fee' }).click();
  await costs.getByRole('textbox', { name: 'Why it is not asked for' }).fill('A neighbour.');
  await costs.getByRole('button', { name: 'Waive it' }).click();
  await expect(costs.getByText('The fee is waived: A neighbour.')).toBeVisible();
});

test('an opening taken back is said at the bench, and the step under way stands still until it is ended', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  await page.getByRole('button', { name: 'To the bench' }).click();
  await expect(page.getByRole('region', { name: 'What the owner allows' })).toContainText('opening it');
  await beginStep(page, 'Two-minute look inside');
  await page.getByRole('timer').waitFor();
  await page.getByRole('button', { name: 'Counter sheet' }).click();
  await page.getByRole('button', { name: 'Take back: Open it and work on it' }).click();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await expect(page.getByText('Taken back: Open it and work on it')).toBeVisible();
  await page.getByRole('button', { name: 'To the bench' }).click();
  await expect(page.getByText(/^Taken back .*: opening it\. Stop what needs it\./)).toBeVisible();
  await expect(page.getByText(/its clock stands still/)).toBeVisible();
  await page.getByRole('button', { name: 'Begun by mistake: take it back' }).click();
  await page.getByRole('button', { name: 'Take it back', exact: true }).click();
  await page.getByRole('timer').waitFor({ state: 'detached' });
});

test('signing prints the tag; what is noted at the bench stays in sight there and at the counter', async ({ app }) => {
  const { page } = app;
  await page.addInitScript(() => {
    window.print = () => {
      document.title = `printed: ${document.querySelector('.counter-prints')?.textContent ?? ''}`;
    };
  });
  await page.reload();
  await setUpShop(page);
  await fillSheet(page);
  await signByKeys(page);
  await page.getByRole('button', { name: /Sign, print/ }).click();
  await page.getByRole('region', { name: 'Papers' }).waitFor({ timeout: 60_000 });
  await expect(page).toHaveTitle(/^printed: .*[A-Z0-9]{3} [A-Z0-9]{3} [A-Z0-9]/);
  await page.getByRole('button', { name: 'To the bench' }).click();
  await lookInside(page);
  await page.getByRole('button', { name: 'Note in the log', exact: true }).click();
  await page.getByRole('textbox', { name: 'What is noted' }).fill('A screw is missing at the back.');
  await page.getByRole('button', { name: 'Save the note' }).click();
  await expect(page.getByRole('region', { name: 'What was noted' })).toContainText('A screw is missing at the back.');
  await page.getByRole('button', { name: 'Counter sheet' }).click();
  await expect(page.getByRole('region', { name: 'What was noted' })).toContainText('A screw is missing at the back.');
});
