import { doStep } from './benchHands.ts';
import { expect, test } from './runtime/journey.ts';
import { scan } from './scanHands.ts';

test.use({ story: 'traced' });

test.describe.configure({ timeout: 240_000 });

test('a step that waits goes on waiting after a reload, both its figures stand; once it is worse, the way back to what worked is shown', async ({
  app,
}) => {
  test.setTimeout(240_000);
  const { page } = app;
  await page.clock.install();
  await page.getByRole('button', { name: 'Bram Ostler' }).click();
  await page.getByRole('link', { name: 'Day line' }).waitFor();
  await scan(page, 'F6C6KA5', page.getByText('Differs.'));
  await page.getByRole('button', { name: 'I did something else' }).click();
  await page.getByRole('textbox', { name: 'Find a step' }).fill('Reseat the memory until both ends latch');
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
  await page.getByRole('timer').waitFor({ timeout: 45_000 });
  await expect(handsOn).toHaveValue('4');
  await expect(waiting).toHaveValue('3');
  await page.getByRole('button', { name: 'Hands back in' }).click();
  await page.clock.fastForward('02:00');
  await page.reload();
  await page.getByRole('timer').waitFor({ timeout: 45_000 });
  await expect(handsOn).toHaveValue('6');
  await expect(waiting).toHaveValue('3');

  const happened = page.getByRole('group', { name: 'What happened' });
  await happened.getByRole('button', { name: /^it works/ }).click();
  await page.getByRole('timer').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Plugs', exact: true }).click();
  await page.getByRole('toolbar', { name: 'Leads to take off' }).getByRole('button').first().click();
  await page.getByRole('button', { name: 'Unplug these' }).click();
  await expect(page.getByRole('button', { name: 'Plug everything in again' })).toBeEnabled();
  await expect(page.getByRole('button', { name: 'Unplug these' })).toBeDisabled();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await doStep(page, 'Reseat the memory until both ends latch', /^worse/);
  const back = page.getByRole('region', { name: 'Back to what worked last' });
  await expect(back).toContainText(/It last worked at .* in “Reseat the memory/);
  await expect(back.getByRole('list', { name: 'Moves back' }).getByRole('listitem')).toHaveText([/^Plug in: /]);
  await back.getByRole('button', { name: 'Done so: write these moves' }).click();
  await expect(back).toContainText('It stands as it did then.');
});
