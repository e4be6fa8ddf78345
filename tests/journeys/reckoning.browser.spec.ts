import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { expect, test } from './runtime/journey.ts';

test.use({ story: 'home' });
test.describe.configure({ timeout: 120_000 });

test('after one closed job Reckoning says that one is too few, beside what it moved', async ({ app }) => {
  const { page } = app;
  await page.getByRole('button', { name: 'Bram Ostler' }).click();
  await page.getByRole('link', { name: 'Reckoning' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /^One job is too few to say/ })).toBeVisible();
  await page.getByRole('radio', { name: 'after the first look' }).focus();
  await page.keyboard.press('Space');
  await expect(page.getByText(/Below six jobs there is no range to say/)).toBeVisible();
  await expect(page.getByRole('row', { name: /too few to say/ }).first()).toBeVisible();
  await expect(page.getByText(/^Counted: 1\. Left out: 0 most likely only/)).toBeVisible();
  await page.getByRole('button', { name: 'Shop settings' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'Monday' }).fill('10-14');
  await page.getByRole('radio', { name: '90 in 100 cases' }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('button', { name: 'Keep it' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Kept\./)).toBeVisible();
  const staff = page.getByRole('region', { name: 'When each is at the bench' });
  await staff.getByRole('radio', { name: 'Bram Ostler' }).focus();
  await page.keyboard.press('Space');
  await staff.getByRole('textbox', { name: 'Saturday' }).fill('');
  await staff.getByRole('button', { name: 'Keep the hours of Bram Ostler' }).focus();
  await page.keyboard.press('Enter');
  await expect(staff.getByText(/^Kept\./)).toBeVisible();
  const money = page.getByRole('form', { name: 'What work costs' });
  await money.getByRole('radiogroup', { name: 'Taken off the price' }).getByRole('radio', { name: 'no' }).focus();
  await page.keyboard.press('Space');
  await money.getByRole('textbox', { name: 'Further rates' }).fill('5.5');
  await money.getByRole('button', { name: 'Keep these terms' }).focus();
  await page.keyboard.press('Enter');
  await expect(money.getByText(/^Kept\./)).toBeVisible();
  const backups = page.getByRole('region', { name: 'Backups' });
  await expect(backups.getByText(/^No good one yet/)).toBeVisible();
  await backups.getByRole('button', { name: 'Back up now' }).press('Enter');
  await expect(backups.getByText(/^Last good one: .* It was brought back on trial/)).toBeVisible({ timeout: 30_000 });
  await expect(backups.getByText(/^One lies in /)).toBeVisible();
  const persons = page.getByRole('region', { name: 'Owners’ data' });
  await expect(persons.getByText(/^Nobody’s time is over within 7 days/)).toBeVisible();
  await persons.getByRole('textbox', { name: 'Look for an owner' }).fill('Amberley');
  await expect(persons.getByText(/^Goes: .*signatures/)).toBeVisible();
  await expect(persons.getByText(/^Stays until January 1, 2037|^Stays until 1 January 2037/)).toBeVisible();
  const [held] = await Promise.all([
    page.waitForEvent('download'),
    persons.getByRole('button', { name: 'All that is held, as a file' }).press('Enter'),
  ]);
  expect(held.suggestedFilename()).toBe('person.json');
  await persons.getByRole('button', { name: 'Erase for ever' }).press('Enter');
  await persons.getByRole('button', { name: 'Yes, erase Judith Amberley for ever' }).press('Enter');
  await expect(persons.getByRole('button', { name: 'Erase for ever' })).toBeHidden();
  const madeOf = page.getByRole('region', { name: 'What this program is made of' });
  await madeOf.getByRole('button', { name: 'Show them' }).press('Enter');
  await expect(madeOf.getByRole('status')).toHaveText(/^\d{2,} packages$/);
  await madeOf.getByText(/^zod \d.* · MIT$/).press('Enter');
  await expect(madeOf.locator('details[open]').getByText(/Permission is hereby granted/)).toBeVisible();
  const [books] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('region', { name: 'Bills for bookkeeping' })
      .getByRole('button', { name: 'Keep as a file' })
      .press('Enter'),
  ]);
  expect(books.suggestedFilename()).toBe('bills.csv');
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await accessibilityFaults(app)).toEqual([]);
  }
});
