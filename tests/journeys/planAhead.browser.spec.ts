import { expect, test } from './runtime/journey.ts';
import { scan } from './scanHands.ts';

test.use({ story: 'tracing' });

test('once the step on offer stands, what would follow it and what may have to be paid for stand below', async ({
  app,
}) => {
  const { page } = app;
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.getByRole('button', { name: 'Bram Ostler' }).click();
  await page.getByRole('link', { name: 'Day line' }).waitFor();
  await scan(page, 'F6C6KA5', page.getByRole('button', { name: 'Start', exact: true }));
  const then = page.getByRole('region', { name: 'Then, as is likeliest' });
  await expect(then.getByRole('listitem')).toHaveCount(2);
  await expect(then.getByRole('listitem').first()).toContainText(/min hands-on/);
  const remedies = page.getByRole('region', { name: 'What may have to be paid for' });
  await expect(remedies.getByRole('listitem').first()).toContainText(/about £\d/);
  // What one thinks oneself is not covered by the strip below it.
  await page.getByRole('button', { name: 'I think it is …' }).click({ trial: true });
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await expect(then).toHaveCount(0);
});
