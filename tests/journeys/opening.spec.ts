import { expect, test } from './runtime/journey.ts';

test('the window opens and shows what the service answers', async ({ app }) => {
  await expect(app.page.getByText('Connected')).toBeVisible();
  await app.page.getByRole('button', { name: 'Add' }).click();
  await expect(app.page.getByText('note 0')).toBeVisible();
});
