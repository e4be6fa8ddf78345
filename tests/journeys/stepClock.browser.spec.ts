import { expect, test } from './runtime/journey.ts';
import { scan } from './scanHands.ts';

test.use({ story: 'traced' });

test('a step that waits goes on waiting after a reload, and both its figures stand', async ({ app }) => {
  const { page } = app;
  await page.clock.install();
  await page.getByRole('button', { name: 'Bram Ostler' }).click();
  await page.getByRole('link', { name: 'Day line' }).waitFor();
  await scan(page, 'F6C6KA5', page.getByText('Differs.'));
  await page.getByRole('button', { name: 'I did something else' }).click();
  await page.getByRole('textbox', { name: 'Find a step' }).fill('Look inside before power');
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Take:/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.clock.fastForward('04:00');
  await page.getByRole('button', { name: 'It waits now' }).click();
  await page.clock.fastForward('03:00');
  const handsOn = page.getByRole('textbox', { name: 'Hands-on' });
  const waiting = page.getByRole('textbox', { name: 'Waiting' });
  await expect(handsOn).toHaveValue('4');

  await page.reload();
  await expect(handsOn).toHaveValue('4');
  await expect(waiting).toHaveValue('3');
  await page.getByRole('button', { name: 'Hands back in' }).click();
  await page.clock.fastForward('02:00');
  await page.reload();
  await expect(handsOn).toHaveValue('6');
  await expect(waiting).toHaveValue('3');
});
