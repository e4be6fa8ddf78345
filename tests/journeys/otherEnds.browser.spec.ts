import type { Page } from '@playwright/test';
import { lookInside } from './benchHands.ts';
import { OWNER, pay, takeIn } from './counterHands.ts';
import { keptPaper } from './keptPaper.ts';
import { expect, test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';
import { scan } from './scanHands.ts';

const MACHINE = 'F6C6KA5';

/** Told to be worth next to nothing, the bench stops and asks; the owner goes on all the same, and a step is offered. */
async function goesOnWhateverItIsWorth(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Ask what it is worth to them' }).click();
  const told = page.getByRole('form', { name: 'Worth to its owner' });
  await told.getByRole('textbox', { name: 'Worth to its owner' }).fill('1');
  await told.getByRole('button', { name: 'Record it' }).click();
  await told.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'To the bench' }).click();
  await expect(page.getByText(/^Not worth it: .* it is worth £1 to its owner/)).toBeVisible();
  await page.getByRole('button', { name: 'Ask the owner which of these' }).click();
  const ask = page.getByRole('group', { name: /^Ask the owner/ });
  await expect(ask.getByRole('radio', { name: 'whether it is worth it' })).toBeChecked();
  await ask.getByRole('button', { name: 'Put the question' }).click();
  const asked = page.getByRole('article', { name: 'go on looking' });
  await asked.getByRole('radio', { name: /^Go on all the same/ }).click();
  await asked.getByRole('radio', { name: 'by phone' }).click();
  await asked.getByRole('button', { name: 'Record the answer' }).click();
  await page.getByText('Go on all the same, whatever it is worth').first().waitFor();
  await page.getByRole('button', { name: 'To the bench' }).click();
  await page.getByRole('button', { name: 'Start', exact: true }).waitFor();
}

/** A picture as a camera's card would hold it: grey, a few pixels a side. */
const photograph = (page: Page, name: string, grey: number) =>
  page
    .evaluate(async (shade) => {
      const canvas = document.createElement('canvas');
      canvas.width = canvas.height = 24;
      const pen = canvas.getContext('2d');
      if (pen) pen.fillStyle = `rgb(${shade} ${shade} ${shade})`;
      pen?.fillRect(0, 0, 24, 24);
      return canvas.toDataURL('image/png').slice('data:image/png;base64,'.length);
    }, grey)
    .then((text) => ({ name, mimeType: 'image/png', buffer: Buffer.from(text, 'base64') }));

test('photographed at the counter, then declined: it is returned unrepaired, and only the diagnosis fee is asked', async ({
  app,
}) => {
  test.setTimeout(180_000);
  const { page } = app;
  await setUpShop(page);
  await takeIn(page, async () => {
    await page
      .getByLabel('Add photographs')
      .and(page.locator('input'))
      .setInputFiles([await photograph(page, 'front.png', 90), await photograph(page, 'back.png', 160)]);
    await expect(page.getByRole('img', { name: 'Photograph, back' })).toBeVisible();
    await expect(page.getByText('2 photographs were taken.')).toBeVisible();
    await expect(page.getByText(/a yes to the photographs/)).toBeVisible();
    await page
      .getByRole('radiogroup', { name: 'Photographs for the record' })
      .getByText('yes', { exact: true })
      .click();
  });
  const receipt = await keptPaper(app, /^Intake receipt IR-/);
  expect(receipt.aloud).toMatch(/2 photographs were taken/);

  await page.getByRole('button', { name: 'To the bench' }).click();
  await lookInside(page);
  await page.getByRole('button', { name: 'Counter sheet' }).click();
  await goesOnWhateverItIsWorth(page);
  await page.getByRole('button', { name: 'Counter sheet' }).click();
  await page.getByRole('radio', { name: 'declined', exact: true }).click();
  await page.getByRole('button', { name: 'Return it unrepaired' }).click();
  await page.getByRole('toolbar', { name: 'Given back' }).getByRole('button', { name: 'mains cord' }).click();
  await page.getByRole('button', { name: 'a tie cut' }).click();
  await pay(page);
  const handOver = page.getByRole('group', { name: /^Hand-over/ });
  await handOver.getByRole('button', { name: 'Type the name instead' }).click();
  await handOver.getByRole('textbox', { name: 'Name in place of a signature' }).fill(OWNER);
  await page.getByRole('button', { name: 'Hand over' }).click();
  await expect(page.getByText(/^Gone home/).first()).toBeVisible();

  const bill = await keptPaper(app, /^Bill \d\d\//);
  expect(bill.aloud).toMatch(/30\.00/);
  const report = await keptPaper(app, /^Return report RR-/);
  expect(report.aloud).toMatch(/as it came/i);
  expect(report.aloud).toMatch(/tie/i);
});

test.describe('ready, and nobody comes', () => {
  test.use({ story: 'ready' });
  test.describe.configure({ timeout: 150_000 });
  test('is reminded, then given the last notice with the price of storage', async ({ app }) => {
    const { page } = app;
    await page.getByRole('button', { name: 'Mina Tidewell' }).click();
    await page.getByRole('link', { name: 'Day line' }).waitFor();
    await scan(page, MACHINE, page.getByRole('toolbar', { name: 'Given back' }));
    await page.getByRole('button', { name: 'Send a reminder' }).click();
    await expect(page.getByText(/^Ready, not collected/).first()).toBeVisible();
    const reminder = await keptPaper(app, /^Reminder R/);
    expect(reminder.aloud).toMatch(/£2\.00/);
    await page
      .getByRole('textbox', { name: 'What local law allows for things not collected' })
      .fill('After that day it may be sold as our law allows.');
    await page.getByRole('button', { name: 'Keep it for all last notices' }).click();
    await page.getByRole('button', { name: 'Keep it for all last notices' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Send the last notice' }).click();
    await expect(page.getByText(/^Last notice sent/)).toBeVisible();
    const notice = await keptPaper(app, /^Last notice LN-/);
    expect(notice.aloud).toMatch(/Judith Amberley/);
    expect(notice.aloud).toMatch(/it may be sold as our law allows/);
  });
});

test.describe('gone home, and back again', () => {
  test.use({ story: 'home' });
  test.describe.configure({ timeout: 180_000 });
  test('with the same fault: no new fee, and the old confirmation is struck out', async ({ app }) => {
    const { page } = app;
    await page.getByRole('button', { name: 'Mina Tidewell' }).click();
    await page.getByRole('link', { name: 'Counter' }).click();
    await page.getByRole('textbox', { name: 'Phone' }).fill('07700 900 143');
    await page.getByRole('textbox', { name: 'Mail' }).focus();
    await page.getByRole('button', { name: 'It is the same person' }).click();
    await page.getByRole('button', { name: /^The same machine/ }).click();
    await page.getByRole('radio', { name: 'the same fault' }).click();
    await page.getByRole('textbox', { name: "In the owner's own words" }).fill('It stays dark again.');
    await page.getByRole('button', { name: 'I hear it running, but the screen stays dark' }).click();
    await page.getByRole('textbox', { name: 'Spend no more than' }).fill('100');
    await page.getByRole('button', { name: 'Type the name instead' }).click();
    await page.getByRole('textbox', { name: 'Name in place of a signature' }).fill('Judith Amberley');
    await page.getByRole('button', { name: /Sign, print/ }).click();
    await page.getByRole('region', { name: 'Papers' }).waitFor();
    const receipt = await keptPaper(app, /^Intake receipt IR-/);
    expect(receipt.aloud).toMatch(/It stays dark again/);
    expect(receipt.aloud).not.toMatch(/£30\.00/);
    await page.getByRole('button', { name: 'It came back: open the older job' }).click();
    await expect(page.getByRole('button', { name: /^It came back \(the same fault\)/ })).toBeVisible();
  });
});
