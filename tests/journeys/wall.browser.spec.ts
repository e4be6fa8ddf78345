import { byKeys } from './byKeys.ts';
import { destroyByKeys, incidentByKeys, wordByKeys } from './deskByKeys.ts';
import { expect, test } from './runtime/journey.ts';
import { scan } from './scanHands.ts';
import { orderByKeys, wallByKeys } from './wallByKeys.ts';

const MACHINE = 'F6C6KA5';

test.use({ story: 'tracing' });
test.describe.configure({ timeout: 240_000 });

test('ours is lent and sold, a part ordered, a mishap told, the word given in part and a drive destroyed, by keyboard', async ({
  app,
}) => {
  const { page } = app;
  const keys = byKeys(page);
  await keys.press(page.getByRole('button', { name: 'Bram Ostler' }));
  await page.getByRole('link', { name: 'Wall' }).waitFor();
  await wallByKeys(app, keys);
  await scan(page, MACHINE, page.getByRole('region', { name: 'Inside view' }));
  await keys.press(page.getByRole('button', { name: 'Counter sheet' }));
  await orderByKeys(app, keys);
  await incidentByKeys(app);
  await wordByKeys(app);
  await destroyByKeys(app);
  expect(keys.unseen(), 'stops where the focus cannot be seen').toEqual([]);
});
