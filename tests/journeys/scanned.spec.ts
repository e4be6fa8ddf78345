import { formatTag, issueTag } from '../../core/custody/tag.ts';
import { seededChance } from '../../electron/cli/demo/seededChance.ts';
import { keptPaper } from './keptPaper.ts';
import { expect, test } from './runtime/journey.ts';
import { scan } from './scanHands.ts';

const MACHINE = 'F6C6KA5';
const LOANER = '5AWWR3K';

test.use({ story: 'tracing' });
test.describe.configure({ timeout: 240_000 });

test('tags are scanned: a printed one at the Counter, a loaner from the Wall into the machine and back, a part to its tray', async ({
  app,
}) => {
  const { page } = app;
  await page.getByRole('button', { name: 'Bram Ostler' }).click();
  const printed = issueTag(seededChance(5).randomInt);
  const name = page.getByRole('textbox', { name: 'Name', exact: true });
  await page.getByRole('link', { name: 'Counter' }).click();
  await name.fill('Tomas Greel');
  await scan(page, printed, page.getByRole('group', { name: /^Machine/ }).getByText(formatTag(printed)));
  await expect(name).toHaveValue('Tomas Greel');

  await page.getByRole('link', { name: 'Wall' }).click();
  const chosen = page.getByRole('region', { name: 'Lunnock 2 × 8 GB' });
  await scan(page, LOANER, chosen);
  await expect(chosen).toContainText('Known-good');

  // The same job, by its owner's name and then by its tag.
  const inside = page.getByRole('region', { name: 'Inside view' });
  await page.getByRole('combobox', { name: 'Find' }).fill('amber');
  await page.getByRole('option', { name: 'Judith Amberley' }).first().click();
  await expect(inside).toBeVisible();
  await page.getByRole('link', { name: 'Wall' }).click();
  await scan(page, MACHINE, inside);
  const inHand = (part: string) => inside.getByText(`${part} in hand.`);
  const bank = inside.getByRole('button', { name: /^Memory slots/ });
  await scan(page, LOANER, inHand('Lunnock 2 × 8 GB'));
  await bank.click();
  await inside
    .getByRole('group', { name: /^Memory slots, from/ })
    .getByRole('button', { name: /^A2/ })
    .click();
  await expect(bank).toHaveAccessibleName(/A2, Memory: Lunnock 2 × 8 GB, SHOP/);
  await scan(page, LOANER, inHand('Lunnock 2 × 8 GB'));
  await inside.getByRole('button', { name: 'its bin: 0' }).click();
  await expect(bank).toHaveAccessibleName(/A2, Memory: Palewater/);

  // The owner's drive has the tag that was printed when it came out.
  await page.getByRole('button', { name: 'Counter sheet' }).click();
  await page.getByText(/^\d+ part tags?$/).click();
  const { aloud } = await keptPaper(app, /^Part tag PT-\d{4}-0001/);
  const tag = aloud.match(/[0-9A-Z]{3} [0-9A-Z]{3} [0-9A-Z*](?= )/)?.[0].replaceAll(' ', '') ?? '';
  await page.getByRole('button', { name: 'To the bench' }).click();
  const socket = inside.getByRole('button', { name: /^M2_1/ });
  await scan(page, tag, inHand('Tarnstone S500'));
  await socket.click();
  await expect(socket).toHaveAccessibleName("M2_1, Drive: Tarnstone S500, owner's, in its place");
  await scan(page, tag, inHand('Tarnstone S500'));
  await inside.getByRole('button', { name: /^tray 3/ }).click();
  await expect(socket).toHaveAccessibleName(/out, tray 3/);
});
