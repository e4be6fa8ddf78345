import type { Locator } from '@playwright/test';
import { beginStep, lookInside } from './benchHands.ts';
import { fillSheet, takeIn } from './counterHands.ts';
import { expect, rough as test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test.describe.configure({ timeout: 120_000 });

test('a limit of fifteen digits is said at its field, and the Counter goes on: then, and when it is loaded again', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await fillSheet(page);
  const limit = page.getByRole('textbox', { name: 'Spend no more than' });
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

test('who cannot be rung or written to, and a day gone by, are said at their field before anything is signed; a sheet is dropped when asked', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await fillSheet(page);
  const wrong: readonly (readonly [string, string, string, string])[] = [
    ['Phone', 'abc', 'Nobody can be rung there: a number in digits.', '01632 960 175'],
    ['Mail', 'nonsense', 'Nothing can be mailed there: a name, @, and where.', ''],
    ['What it is', 'x'.repeat(301), 'That is 301 letters; 300 fit. Nothing was cut.', 'desktop PC'],
  ];
  for (const [label, cannotBe, says, right] of wrong) {
    const field = page.getByRole('textbox', { name: label, exact: true });
    await field.fill(cannotBe);
    await field.press('Tab');
    await expect(page.getByText(says)).toBeVisible();
    await expect(page.getByText(/^Still open: .+, signature$/)).toBeVisible();
    await expect(field).toHaveValue(cannotBe);
    await field.fill(right);
    await expect(page.getByText(says)).toBeHidden();
  }
  const promised = page.getByLabel('Promised for');
  await promised.fill('2020-01-01T12:00');
  await expect(page.getByText('That moment has passed.')).toBeVisible();
  await promised.fill('');
  await expect(page.getByText(/^Still open: signature$/)).toBeVisible();

  await page.getByText(/^Kept as a draft/).waitFor();
  await page.getByRole('button', { name: /^Begin a new sheet/ }).click();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Edda Lindqvist');
  await page.getByRole('button', { name: /^Begin a new sheet/ }).click();
  await page.getByRole('button', { name: 'Drop it, begin a new one' }).click();
  await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('');
});

test('a kept draft that cannot be shown takes no room down, and can be dropped for a new sheet', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await page.route(/loadDraft$/, (route) => route.fulfill({ json: { json: JSON.stringify({ owner: null }) } }));
  await page.getByRole('link', { name: 'Counter' }).click();
  await expect(page.getByText('This room could not be shown.')).toBeVisible();
  await page.getByRole('link', { name: 'Wall' }).click();
  await expect(page.getByRole('button', { name: 'Add a part' })).toBeVisible();
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
  await expect(page.getByRole('textbox', { name: 'Spend no more than' })).toBeVisible();
});

test('a tag that hangs on something already is said at its field, and not taken', async ({ app }) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  const tag = (await page.locator('h1').locator('..').locator('.k-tag').first().textContent()) ?? '';
  await page.getByRole('link', { name: 'Counter' }).click();
  await page.getByRole('textbox', { name: 'Scan a printed tag instead' }).fill(tag);
  await expect(page.getByText(/hangs on something already/)).toBeVisible();
});

test('thirteen outcomes cover neither the caution of a running step nor its clock; what is pressed too late logs nothing', async ({
  app,
}) => {
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  await page.getByRole('button', { name: 'To the bench' }).click();
  await lookInside(page);
  await beginStep(page, 'Watch the first start');
  await page.getByRole('timer').waitFor();
  const outcomes = page.getByRole('group', { name: 'What happened' });
  expect(await outcomes.getByRole('button').count()).toBeGreaterThanOrEqual(13);
  for (const seen of [
    page.getByRole('list', { name: 'Take care' }).getByRole('listitem').first(),
    page.getByRole('timer'),
  ])
    expect(await isOnTop(seen)).toBe(true);
  const first = outcomes.getByRole('button').first();
  expect(await isOnTop(first)).toBe(true);
  const box = await first.boundingBox();
  if (!box) throw new Error('the first outcome is not shown');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.click(x, y);
  await page.getByRole('timer').waitFor({ state: 'detached' });
  await page.mouse.click(x, y);
  await page.waitForTimeout(300);
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

/** Is it what lies on top at its middle, and at all four of its corners? */
const isOnTop = (seen: Locator): Promise<boolean> =>
  seen.evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const points = [
      [(left + right) / 2, (top + bottom) / 2],
      [left + 2, top + 2],
      [left + 2, bottom - 2],
    ];
    return points.every(([x = 0, y = 0]) => element.contains(document.elementFromPoint(x, y)));
  });
