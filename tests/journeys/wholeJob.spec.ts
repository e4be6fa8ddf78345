import { doStep, lookInside, prove } from './benchHands.ts';
import { OWNER, pay, takeIn } from './counterHands.ts';
import { keptPaper } from './keptPaper.ts';
import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { expect, test } from './runtime/journey.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test('a machine whose memory was not latched is taken in, cured, proved and goes home', async ({ app }) => {
  test.setTimeout(150_000);
  const { page } = app;
  await setUpShop(page);
  await takeIn(page);
  await expect(page.getByRole('button', { name: /^Intake receipt IR-/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Consent sheet CS-/ })).toBeVisible();
  expect(await accessibilityFaults(app), 'counter').toEqual([]);

  await page.getByRole('link', { name: 'Bench' }).click();
  await page.getByRole('button', { name: `Open ${OWNER}` }).click();
  await lookInside(page);
  await page.getByRole('button', { name: 'What is seen' }).click();
  await page.getByRole('button', { name: 'Record what is seen' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await expect(page.getByRole('button', { name: 'Go on to: Fitting' })).toBeVisible();
  expect(await accessibilityFaults(app), 'bench').toEqual([]);
  await doStep(page, 'Reseat the memory until both ends latch', /^it works/);
  await expect(page.getByRole('region', { name: 'Verdict' })).toContainText('Cured');
  await page.getByRole('button', { name: 'Record as cured' }).click();

  await prove(page, 'Cold starts', '5 of 5', '5 of 5');
  await page.getByRole('button', { name: 'Ready to go home' }).click();
  await page.getByRole('link', { name: 'Day line' }).click();
  expect(await accessibilityFaults(app), 'day line').toEqual([]);
  await page.getByRole('button', { name: /^Open at/ }).click();

  const costs = page.getByRole('group', { name: /^What it costs/ });
  await costs.getByRole('button', { name: /^Add a charge/ }).click();
  await costs.getByRole('radio', { name: 'given for nothing' }).click();
  await costs.getByRole('textbox', { name: 'What is given' }).fill('a fresh cable tie');
  const worth = costs.getByRole('textbox', { name: 'What it is worth' });
  await worth.fill('1.50');
  await worth.press('Tab');
  await costs.getByRole('button', { name: 'Record it' }).click();
  await expect(costs.getByText('a fresh cable tie, given (worth £1.50)')).toBeVisible();
  await page.getByRole('toolbar', { name: 'Given back' }).getByRole('button', { name: 'mains cord' }).click();
  await pay(page);
  const handOver = page.getByRole('group', { name: /^Hand-over/ });
  await handOver.getByRole('button', { name: 'Type the name instead' }).click();
  await handOver.getByRole('textbox', { name: 'Name in place of a signature' }).fill(OWNER);
  await page.getByRole('button', { name: 'Hand over' }).click();
  await expect(page.getByText(/^Gone home/).first()).toBeVisible();
  expect(await accessibilityFaults(app), 'counter, gone home').toEqual([]);

  for (const [paper, title, says] of [
    [/^Bill \d\d\//, /\d\d\/0001/, /a fresh cable tie/],
    [/^Return report RR-/, /RR-\d{4}-/, /No part is to blame/],
  ] as const) {
    const read = await keptPaper(app, paper);
    expect(read.xmp.title).toMatch(title);
    expect(read.aloud).toMatch(says);
    expect(read.marked && read.showsTitle).toBe(true);
    expect(JSON.stringify(read.trees)).toMatch(/"role":"TH"/);
    expect(read.info.Language).toMatch(/^en/);
  }
});
