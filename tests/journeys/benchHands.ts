import { expect, type Page } from '@playwright/test';

/** Takes a step that is not the one on offer, starts it, and presses its outcome. */
export async function doStep(page: Page, step: string, outcome: RegExp): Promise<void> {
  await beginStep(page, step);
  await page.getByRole('group', { name: 'What happened' }).getByRole('button', { name: outcome }).click();
  await page.getByRole('timer').waitFor({ state: 'detached' });
}

/** Takes a step that is not the one on offer, and starts it. */
export async function beginStep(page: Page, step: string): Promise<void> {
  await page.getByRole('button', { name: 'I did something else' }).click();
  await page.getByRole('textbox', { name: 'Find a step' }).fill(step);
  await page.getByRole('button', { name: `Take: ${step}`, exact: true }).click();
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await startsOrSaysWhy(page);
}

/** Takes the two-minute look, taps what is found, and logs it at one press. */
export async function lookInside(page: Page, ...found: readonly string[]): Promise<void> {
  await beginStep(page, 'Two-minute look inside');
  const card = page.getByRole('form', { name: 'What happened' });
  for (const one of found) await card.getByRole('checkbox', { name: one }).check();
  await card.getByRole('button', { name: found.length > 0 ? /^Log: / : 'Nothing found' }).click();
  await page.getByRole('timer').waitFor({ state: 'detached' });
}

/** The clock of the step runs; where it does not, what the screen says instead fails the journey in its own words. */
async function startsOrSaysWhy(page: Page): Promise<void> {
  const said = page.getByRole('alert');
  await page.getByRole('timer').or(said).first().waitFor();
  expect(await said.allInnerTexts()).toEqual([]);
}

/** Starts a proof and writes that it held. */
export async function prove(page: Page, proof: string, result: string, limit: string): Promise<void> {
  const proofs = page.getByRole('region', { name: 'Final tests' });
  await proofs.getByRole('button', { name: `Start: ${proof}` }).click();
  await proofs.getByRole('textbox', { name: 'Result' }).fill(result);
  await proofs.getByRole('textbox', { name: 'Limit', exact: true }).fill(limit);
  await proofs.getByRole('button', { name: 'Passed' }).click();
  await proofs.getByRole('textbox', { name: 'Result' }).waitFor({ state: 'detached' });
}
