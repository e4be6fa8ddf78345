import type { Page } from '@playwright/test';
import { prove } from './benchHands.ts';
import { pay } from './counterHands.ts';
import { keptPaper } from './keptPaper.ts';
import { expect, test } from './runtime/journey.ts';
import { scan } from './scanHands.ts';

const OWNER = 'Judith Amberley';
const MACHINE = 'F6C6KA5';

test.use({ story: 'traced' });

async function offer(page: Page): Promise<void> {
  const ask = page.getByRole('group', { name: /^Ask the owner/ });
  await ask.getByRole('radio', { name: 'a part on offer' }).click();
  await expect(ask.getByRole('radio', { name: 'Aldermoor AM-B46' })).toBeChecked();
  await ask.getByRole('radio', { name: /^Wrenfield WF-M2/ }).click();
  const table = ask.getByRole('table', { name: 'The owner’s part and ours, attribute by attribute' });
  await expect(table.getByRole('row').nth(1)).toContainText('worse');
  await expect(table.getByRole('row', { name: /Memory slots/i })).toContainText(/4.*2.*worse/);
  await ask.getByRole('textbox', { name: 'Price of the part' }).fill('89');
  await ask.getByRole('textbox', { name: 'Warranty' }).fill('24');
  await ask.getByRole('radio', { name: 'new', exact: true }).click();
  await ask
    .getByRole('textbox', { name: 'Why not the same part' })
    .fill('No longer made; an equal one takes six days.');
  await ask.getByRole('button', { name: 'Add a small part' }).click();
  await ask.getByRole('textbox', { name: 'Small part 1' }).fill('Inside hub lead');
  await ask.getByRole('textbox', { name: 'Its price, 1' }).fill('7.50');
  await ask.getByRole('button', { name: 'Add what must be done afterwards' }).click();
  await ask.getByRole('textbox', { name: 'To do afterwards 1' }).fill('Enter the recovery key once at the first start');
  await ask.getByRole('radio', { name: 'the shop may keep' }).click();
  await ask.getByRole('textbox', { name: 'Limit with answer 1' }).fill('260');
  await ask.getByRole('button', { name: 'Put the question' }).click();
}

async function answerByPhone(page: Page): Promise<void> {
  const asked = page.getByRole('article', { name: 'Part on offer' });
  await asked.getByRole('radio', { name: 'Fit this one' }).click();
  await asked.getByRole('radio', { name: 'by phone' }).click();
  await asked.getByRole('textbox', { name: 'Read back' }).fill('Board eighty-nine pounds new, yes; up to 260 in all.');
  await asked.getByRole('button', { name: 'Record the answer' }).click();
}

test('a dead memory channel: the lesser board is offered, agreed by phone, fitted, proved and goes home', async ({
  app,
}) => {
  test.setTimeout(200_000);
  const { page } = app;
  await page.getByRole('button', { name: 'Bram Ostler' }).click();
  await page.getByRole('link', { name: 'Day line' }).waitFor();
  await scan(page, MACHINE, page.getByText('Differs.'));
  const verdict = page.getByRole('region', { name: 'Verdict' });
  await expect(verdict).toContainText('Confirmed');
  // The board has several slots: which one it is is asked before the verdict can be written, and said beside the key.
  const confirm = verdict.getByRole('button', { name: 'Record as confirmed' });
  await expect(confirm).toBeDisabled();
  await expect(verdict.getByText('Say which one it is, or that it is not known.')).toBeVisible();
  await verdict.getByRole('radiogroup', { name: 'Which slot is it?' }).getByRole('radio', { name: 'B1' }).click();
  await confirm.click();
  await verdict.waitFor({ state: 'detached' });

  await page.getByRole('button', { name: 'Counter sheet' }).click();
  await offer(page);
  await answerByPhone(page);
  await expect(page.getByText(/^Fitting/).first()).toBeVisible();
  const disclosed = await keptPaper(app, /^Substitute-part disclosure SPD-/);
  expect(disclosed.aloud).toMatch(/Wrenfield WF-M2/);
  expect(disclosed.aloud).toMatch(/worse/i);

  await page.getByRole('button', { name: 'To the bench' }).click();
  await fit(page);
  await page.getByRole('button', { name: 'Go on to: Final tests' }).click();
  await prove(page, 'Memory pass', '0 errors', '0 errors in one whole pass');
  await prove(page, 'Cold starts', '5 of 5', '5 of 5');
  await page.getByRole('button', { name: 'Ready to go home' }).click();
  await expect(page.getByRole('region', { name: 'Next step' })).toBeVisible();

  await scan(page, MACHINE, page.getByRole('toolbar', { name: 'Given back' }));
  await handOver(page);
  const report = await keptPaper(app, /^Return report RR-/);
  expect(report.aloud).toMatch(/You told us.*stays dark.*We saw It goes on and off several times/);
  expect(report.aloud).toMatch(/Aldermoor AM-B46.*had failed; we have confirmed it/);
  expect(report.aloud).toMatch(/Confirmed on the second rig/);
  const slip = await keptPaper(app, /^Replaced-part slip RPS-/);
  expect(slip.aloud).toMatch(/Aldermoor AM-B46/);
  const bill = await keptPaper(app, /^Bill \d\d\//);
  expect(bill.aloud).toMatch(/Wrenfield WF-M2, new £14\.83 £89\.00/);
  expect(bill.aloud).toMatch(/Inside hub lead £1\.25 £7\.50/);
});

/** The board in, what it has no slot for struck off the slot plan, all of the owner's own back, the old one on its shelf. */
async function fit(page: Page): Promise<void> {
  const toFit = page.getByRole('region', { name: 'Parts to fit' });
  const into = async (part: string, slot: string) => {
    await toFit.getByRole('button', { name: `Fit ${part} into ${slot}` }).click();
    await toFit.getByRole('button', { name: `Fit ${part} into ${slot}` }).waitFor({ state: 'detached' });
  };
  await into('Wrenfield WF-M2', 'board');
  await page.getByRole('button', { name: 'What is inside', exact: true }).click();
  for (const slot of ['A2', 'B2', 'x4', 'x1 lower', 'M2_2', 'SATA 5', 'SATA 6'])
    await page.getByRole('button', { name: `No such slot: ${slot}`, exact: true }).click();
  await page.getByRole('button', { name: 'SATA 3 is called otherwise' }).click();
  await page.getByRole('textbox', { name: 'Name as printed' }).first().fill('SATA3_1');
  await page.getByRole('button', { name: 'Name it so' }).click();
  await page.getByText('A slot that is not in the list').click();
  await page.getByRole('textbox', { name: 'Name as printed' }).fill('PUMP_FAN');
  await page.getByRole('radio', { name: 'fan', exact: true }).click();
  await page.getByRole('button', { name: 'Add the slot' }).click();
  for (const slot of ['SATA3_1 (drive)', 'PUMP_FAN (fan)']) await page.getByRole('textbox', { name: slot }).waitFor();
  await page.getByRole('button', { name: 'Save the list' }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await into('Corvane K6-65G', 'socket');
  await into('Windlass T-155', 'cooler');
  await into('Brindle 120', 'x16');
  await into('Tarnstone S500', 'M2_1');
  for (const slot of ['A1', 'B1']) {
    const row = toFit.getByRole('listitem').filter({ hasText: 'Palewater' }).first();
    await row.getByRole('radio', { name: slot }).click();
    const only = row.getByRole('radio', { name: 'The board has only these' });
    if (await only.isVisible()) await only.click();
    await into('Palewater PW8-2666', slot);
  }
  const dead = page.getByRole('region', { name: 'Dead parts' });
  await dead.getByRole('textbox', { name: 'Shelf' }).fill('K2');
  await dead.getByRole('button', { name: 'Keep Aldermoor AM-B46' }).click();
  await page.getByRole('button', { name: 'Plug everything in again' }).click();
  await page.getByRole('button', { name: 'Plug everything in again' }).waitFor({ state: 'detached' });
}

async function handOver(page: Page): Promise<void> {
  const back = page.getByRole('toolbar', { name: 'Given back' });
  for (const thing of ['mains cord', 'DisplayPort lead', 'mouse receiver'])
    await back.getByRole('button', { name: thing }).click();
  const ours = page.getByRole('toolbar', { name: 'Ours, taken off' });
  for (const thing of await ours.getByRole('button').all()) await thing.click();
  await pay(page);
  const form = page.getByRole('group', { name: /^Hand-over/ });
  await form.getByRole('button', { name: 'Type the name instead' }).click();
  await form.getByRole('textbox', { name: 'Name in place of a signature' }).fill(OWNER);
  await page.getByRole('button', { name: 'Hand over' }).click();
  await expect(page.getByText(/^Gone home/).first()).toBeVisible();
}
