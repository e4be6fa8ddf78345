import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, rough as test } from './runtime/journey.ts';

test('when the app is killed its service closes the shop by itself', async ({ app }) => {
  await expect(app.page.getByLabel('Name of the shop')).toBeVisible();
  const lock = join(app.data, 'service.lock');
  expect(existsSync(lock)).toBe(true);
  app.electron?.process().kill('SIGKILL');
  await expect.poll(() => existsSync(lock)).toBe(false);
});
