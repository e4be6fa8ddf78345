import type { Page } from '@playwright/test';

export const OWNER = 'Edda Lindqvist';
const YES = [
  'Open it and work on it',
  'Our parts in it for trial',
  'Start its own system',
  'Nothing above the limit without asking',
  'The diagnosis fee',
];

/** Fills the taking-in sheet as the desk would while the owner stands there, and has it signed; `also` comes before. */
export async function takeIn(page: Page, also: () => Promise<void> = async () => undefined): Promise<void> {
  await fillSheet(page);
  await also();
  await signByKeys(page);
  await page.getByRole('button', { name: /Sign, print/ }).click();
  await page.getByRole('region', { name: 'Papers' }).waitFor({ timeout: 60_000 });
}

/** The owner's name, typed where a hand would sign. */
export async function signByKeys(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Type the name instead' }).click();
  await page.getByRole('textbox', { name: 'Name in place of a signature' }).fill(OWNER);
}

/** Fills the taking-in sheet, all but the signature. */
export async function fillSheet(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Counter' }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill(OWNER);
  await page.getByRole('textbox', { name: 'Phone' }).fill('01632 960 175');
  await page.getByRole('textbox', { name: 'What it is' }).fill('desktop PC, mid tower');
  await page.getByRole('textbox', { name: "In the owner's own words" }).fill('It stays dark since I dusted it.');
  await page.getByRole('button', { name: 'I hear it running, but the screen stays dark' }).click();
  await page.getByRole('button', { name: 'cleaned' }).click();
  await page.getByRole('button', { name: 'Every time I start it' }).click();
  await page.getByRole('button', { name: 'mains cord' }).click();
  await page.getByRole('textbox', { name: 'Spend no more than' }).fill('180');
  for (const line of YES) await page.getByRole('radiogroup', { name: line }).getByText('yes', { exact: true }).click();
  await page.getByRole('radiogroup', { name: 'Is the disk encrypted?' }).getByText('no', { exact: true }).click();
}

/** Pays what is still open where the machine is handed over, by card; of less than half a minute's work there is nothing. */
export async function pay(page: Page): Promise<void> {
  const form = page.getByRole('group', { name: /^Hand-over/ });
  const now = form.getByRole('button', { name: 'Take the payment' });
  await form.getByRole('button', { name: 'Hand over' }).waitFor();
  if (!(await now.isVisible())) return;
  await now.click();
  await form.getByRole('radio', { name: 'by card' }).click();
  const paid = form.getByRole('button', { name: 'It was paid' });
  await paid.click();
  await paid.waitFor({ state: 'detached' });
}
