import type { Locator, Page } from '@playwright/test';
import { keptPaper } from './keptPaper.ts';
import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { expect } from './runtime/journey.ts';
import type { OpenedApp } from './runtime/openApp.ts';

const OWNER = 'Judith Amberley';
const DRIVE = 'Tarnstone S500';

/** Keys where the focus is put; the way there, stop by stop, is gone in the other journeys by keyboard. */
const focused = (page: Page) => ({
  press: async (target: Locator) => {
    await target.focus();
    await page.keyboard.press('Space');
  },
  write: (target: Locator, text: string) => target.fill(text),
});

/** What went wrong at our hands is written down and told on the telephone, by keyboard alone. */
export async function incidentByKeys({ page, ...app }: OpenedApp): Promise<void> {
  const keys = focused(page);
  const row = page.getByRole('group', { name: /^Incidents/ });
  await keys.press(row.getByRole('button', { name: 'Record an incident' }));
  await keys.write(row.getByRole('textbox', { name: 'What happened' }), 'A clip of the slot broke off.');
  await keys.press(row.getByRole('radio', { name: 'overtightened' }));
  await keys.write(row.getByRole('textbox', { name: 'What it costs us' }), '12.50');
  await expect(row.getByRole('radio', { name: 'overtightened' })).toBeChecked();
  expect(await accessibilityFaults({ page, ...app }), 'an incident as it is written').toEqual([]);
  await keys.press(row.getByRole('button', { name: 'Record it' }));
  await expect(row.getByText(/It costs us £12\.50\. The owner was not told yet/)).toBeVisible();
  await keys.press(row.getByRole('radio', { name: 'by phone' }));
  await keys.write(row.getByRole('textbox', { name: 'Read back' }), 'A clip broke; it costs me nothing.');
  await keys.press(row.getByRole('button', { name: 'The owner was told so' }));
  await expect(row.getByText('The owner was told.')).toBeVisible();
}

/** What becomes of a drive is asked and answered in a letter, kept with the answer; two things are asked one by one. */
export async function wordByKeys({ page }: OpenedApp): Promise<void> {
  const keys = focused(page);
  const ask = page.getByRole('group', { name: /^Ask the owner/ });
  await keys.press(ask.getByRole('radio', { name: 'what becomes of a part' }));
  await keys.press(ask.getByRole('radio', { name: DRIVE }));
  await expect(ask.getByText(/signs for that alone/)).toBeVisible();
  await keys.press(ask.getByRole('button', { name: 'Put the question' }));
  const word = page.getByRole('article', { name: 'what becomes of a part' });
  await expect(word.getByText(/^Try 1 of 3 by/)).toBeVisible();
  await keys.press(word.getByRole('radio', { name: 'Give it back to me' }));
  await keys.press(word.getByRole('radio', { name: 'in writing' }));
  await keys.write(word.getByRole('textbox', { name: 'The words as written' }), 'Give it back to me, please.');
  await word
    .getByLabel('Add the letter or message')
    .and(page.locator('input'))
    .setInputFiles([{ name: 'letter.txt', mimeType: 'text/plain', buffer: Buffer.from('Give it back, please.') }]);
  await expect(word.getByText('Kept with it: letter.txt')).toBeVisible();
  await keys.press(word.getByRole('button', { name: 'Record the answer' }));
  await expect(word.getByRole('button', { name: 'What they wrote' })).toBeVisible();

  await keys.press(ask.getByRole('radio', { name: 'spend more' }));
  for (const [at, what, price] of [
    [1, 'Fan lead', '6'],
    [2, 'Coin cell', '3'],
  ] as const) {
    await keys.press(ask.getByRole('button', { name: 'Add a thing to be agreed to by itself' }));
    await keys.write(ask.getByRole('textbox', { name: `Thing ${at}` }), what);
    await keys.write(ask.getByRole('textbox', { name: `Its price, ${at}` }), price);
  }
  await keys.press(ask.getByRole('button', { name: 'Put the question' }));
  const more = page.getByRole('article', { name: 'spend more' });
  await keys.press(more.getByRole('button', { name: 'Coin cell' }));
  await keys.press(more.getByRole('radio', { name: 'by phone' }));
  await keys.press(more.getByRole('button', { name: 'Record the answer' }));
  await expect(page.getByText(/limit £153/).first()).toBeVisible();
}

/** The owner signs for the drive's end alone, and it goes home without: destroyed at the bench, with its certificate. */
export async function destroyByKeys(app: OpenedApp): Promise<void> {
  const { page } = app;
  const keys = focused(page);
  const lines = page.getByRole('group', { name: /^Yes or no/ });
  await keys.press(lines.getByRole('radio', { name: 'Destroy a drive for good' }));
  await keys.press(lines.getByRole('radio', { name: 'yes', exact: true }));
  await keys.write(lines.getByRole('textbox', { name: 'Which drive' }), DRIVE);
  await keys.press(lines.getByRole('button', { name: 'Type the name instead' }));
  await keys.write(lines.getByRole('textbox', { name: 'Name in place of a signature' }), OWNER);
  await keys.press(lines.getByRole('button', { name: 'Record this answer' }));
  await keys.press(page.getByRole('radio', { name: 'declined', exact: true }));
  await keys.press(page.getByRole('button', { name: 'Return it unrepaired' }));
  await keys.press(page.getByRole('button', { name: 'To the bench' }));
  await keys.press(page.getByRole('button', { name: `${DRIVE} is destroyed` }));
  const form = page.getByRole('group', { name: `${DRIVE} is destroyed` });
  for (const [field, text] of [
    ['Maker', 'Tarnstone'],
    ['Model', 'S500'],
    ['Serial number', 'TS-500-81'],
    ['What kind of drive', 'flash, M.2'],
    ['How it was destroyed', 'shredded to 2 mm'],
    ['With which tool', 'shredder of the recycler'],
    ['How it was checked', 'no piece larger than 2 mm'],
  ] as const)
    await keys.write(form.getByRole('textbox', { name: field }), text);
  await keys.press(form.getByRole('radio', { name: 'no errors' }));
  await keys.press(form.getByRole('radio', { name: 'Nessa Quill' }));
  expect(await accessibilityFaults(app), 'a drive that is destroyed').toEqual([]);
  await keys.press(form.getByRole('button', { name: 'Destroyed: write the certificate' }));
  await form.waitFor({ state: 'detached' });
  await keys.press(page.getByRole('button', { name: 'Counter sheet' }));
  const certificate = await keptPaper(app, /^Media sanitisation certificate MSC?-/);
  expect(certificate.aloud).toMatch(/TS-500-81.*shredded to 2 mm.*Nessa Quill/);
}
