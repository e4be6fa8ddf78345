import type { Page } from '@playwright/test';

/** Sets a fresh shop up as an owner would, by its labels, and says who is at the window. */
export async function setUpShop(page: Page): Promise<void> {
  await page.getByLabel('Name of the shop').fill('Harrow Lane Repairs');
  await page.getByLabel('Address').fill('3 Harrow Lane');
  await page.getByLabel('Phone').fill('01632 960 118');
  await page.getByLabel('Who works here').fill('Mara, Ivo');
  await page.getByRole('button', { name: 'Save and start' }).click();
  await page.getByRole('button', { name: 'Mara' }).click();
}
