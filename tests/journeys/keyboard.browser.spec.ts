import type { Locator, Page } from '@playwright/test';
import { byKeys, type Keys } from './byKeys.ts';
import { expect, test } from './runtime/journey.ts';
import { burst } from './scanHands.ts';

const OWNER = 'Runa Halloway';

/** The focus is somewhere after what was just pressed went away: the next Tab goes on from there, not from the top. */
async function notLost(page: Page, after: string): Promise<void> {
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.tagName ?? 'nothing'), { message: `focus after ${after}` })
    .not.toBe('BODY');
}

/** What has the focus at the lower edge stays in sight when the room for the sheet becomes lower. */
async function staysInSight(page: Page, focused: Locator): Promise<void> {
  const size = page.viewportSize() ?? { width: 1280, height: 720 };
  const box = await focused.boundingBox();
  await page.setViewportSize({ ...size, height: Math.round((box?.y ?? 0) + 60) });
  await expect(focused).toBeInViewport({ ratio: 1 });
  await page.setViewportSize(size);
}

async function openShop(page: Page, keys: Keys): Promise<void> {
  await page.getByRole('textbox', { name: 'Name of the shop' }).waitFor();
  await keys.write(page.getByRole('textbox', { name: 'Name of the shop' }), 'Harrow Lane Repairs');
  await keys.write(page.getByRole('textbox', { name: 'Address' }), '3 Harrow Lane');
  await keys.write(page.getByRole('textbox', { name: 'Phone' }), '01632 960 118');
  await keys.write(page.getByRole('textbox', { name: 'Who works here' }), 'Mara, Ivo');
  await keys.press(page.getByRole('button', { name: 'Save and start' }));
  await keys.press(page.getByRole('button', { name: 'Mara' }));
}

async function takeIn(page: Page, keys: Keys): Promise<void> {
  await keys.press(page.getByRole('button', { name: 'Take a machine in' }));
  await page.getByRole('textbox', { name: 'Name', exact: true }).waitFor();
  await notLost(page, 'going to the Counter');
  await keys.write(page.getByRole('textbox', { name: 'Name', exact: true }), OWNER);
  await keys.write(page.getByRole('textbox', { name: 'Phone' }), '01632 960 177');
  await keys.write(page.getByRole('textbox', { name: 'What it is' }), 'desktop PC, mid tower');
  await keys.write(page.getByRole('textbox', { name: "In the owner's own words" }), 'It stays dark since I dusted it.');
  await keys.press(page.getByRole('button', { name: 'I hear it running, but the screen stays dark' }));
  await keys.reach(page.getByRole('button', { name: 'cleaned' }));
  await staysInSight(page, page.getByRole('button', { name: 'cleaned' }));
  await keys.press(page.getByRole('button', { name: 'cleaned' }));
  await keys.press(page.getByRole('button', { name: 'Every time I start it' }));
  await keys.press(page.getByRole('button', { name: 'mains cord' }));
  await keys.write(page.getByRole('textbox', { name: 'Spend no more than' }), '180');
  for (const line of [
    'Open it and work on it',
    'Our parts in it for trial',
    'Start its own system',
    'Nothing above the limit without asking',
    'The diagnosis fee',
  ])
    await keys.press(page.getByRole('radiogroup', { name: line }).getByRole('radio', { name: 'yes' }));
  await keys.press(
    page.getByRole('radiogroup', { name: 'Is the disk encrypted?' }).getByRole('radio', { name: 'no', exact: true }),
  );
  await keys.press(page.getByRole('button', { name: 'Type the name instead' }));
  await keys.write(page.getByRole('textbox', { name: 'Name in place of a signature' }), OWNER);
  await keys.press(page.getByRole('button', { name: /Sign, print/ }));
  await page.getByRole('region', { name: 'Papers' }).waitFor();
}

async function begin(page: Page, keys: Keys, name: string): Promise<void> {
  await keys.press(page.getByRole('button', { name: 'I did something else' }));
  await keys.write(page.getByRole('textbox', { name: 'Find a step' }), name);
  await keys.press(page.getByRole('button', { name: `Take: ${name}`, exact: true }));
  await keys.press(page.getByRole('button', { name: 'Start', exact: true }));
  await page.getByRole('timer').waitFor();
  await notLost(page, `starting ${name}`);
}

/** Eight places by their digits, logged by Enter; a scan meanwhile taps nothing and logs nothing. */
async function lookInside(page: Page, keys: Keys): Promise<void> {
  await begin(page, keys, 'Two-minute look inside');
  const card = page.getByRole('form', { name: 'What happened' });
  const tapped = card.getByRole('checkbox', { checked: true });
  await page.keyboard.press('4');
  await page.keyboard.press('8');
  await expect(tapped).toHaveCount(2);
  await expect(card.getByRole('checkbox', { name: 'the card is loose' })).toBeChecked();
  await burst(page, '4848484');
  await expect(tapped).toHaveCount(2);
  for (const digit of [...'444', ...'8888888']) await page.keyboard.press(digit, { delay: 120 });
  await expect(card.getByRole('button', { name: 'Nothing found' })).toBeVisible();
  await page.keyboard.press('Enter');
  await page.getByRole('timer').waitFor({ state: 'detached' });
  await notLost(page, 'the outcome of the look');
}

async function step(page: Page, keys: Keys, name: string, outcome: RegExp): Promise<void> {
  await begin(page, keys, name);
  await keys.press(page.getByRole('group', { name: 'What happened' }).getByRole('button', { name: outcome }));
  await page.getByRole('timer').waitFor({ state: 'detached' });
  await notLost(page, `the outcome of ${name}`);
}

test('a whole job is done by keyboard alone, and the focus is seen at every stop', async ({ app }) => {
  test.setTimeout(180_000);
  const { page } = app;
  const keys = byKeys(page);
  await openShop(page, keys);
  await takeIn(page, keys);

  await keys.press(page.getByRole('button', { name: 'To the bench' }));
  await page.getByRole('region', { name: 'Next step' }).waitFor();
  await notLost(page, 'going to the Bench');
  await lookInside(page, keys);
  await keys.press(page.getByRole('button', { name: 'What is seen' }));
  await keys.press(page.getByRole('button', { name: 'Record what is seen' }));
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await notLost(page, 'a dialog that closed');
  await step(page, keys, 'Reseat the memory until both ends latch', /^it works/);
  await keys.press(page.getByRole('button', { name: 'Record as cured' }));

  const proofs = page.getByRole('region', { name: 'Final tests' });
  await keys.press(proofs.getByRole('button', { name: 'Start: Cold starts' }));
  await keys.write(proofs.getByRole('textbox', { name: 'Result' }), '5 of 5');
  await notLost(page, 'starting a proof');
  await keys.write(proofs.getByRole('textbox', { name: 'Limit', exact: true }), '5 of 5');
  await keys.press(proofs.getByRole('button', { name: 'Passed' }));
  await proofs.getByRole('textbox', { name: 'Result' }).waitFor({ state: 'detached' });
  await notLost(page, 'the end of a proof');
  await keys.press(page.getByRole('button', { name: 'Ready to go home' }));

  await keys.reach(page.getByRole('link', { name: 'Day line' }));
  await page.keyboard.press('Enter');
  await keys.press(page.getByRole('button', { name: /^Open at/ }));
  await keys.press(page.getByRole('toolbar', { name: 'Given back' }).getByRole('button', { name: 'mains cord' }));
  const handOver = page.getByRole('group', { name: /^Hand-over/ });
  const unpaid = handOver.getByRole('textbox', { name: 'Or why it goes home unpaid' });
  if (await unpaid.isVisible()) await keys.write(unpaid, 'By transfer.');
  await keys.press(handOver.getByRole('button', { name: 'Type the name instead' }));
  await keys.write(handOver.getByRole('textbox', { name: 'Name in place of a signature' }), OWNER);
  await keys.press(page.getByRole('button', { name: 'Hand over' }));
  await expect(page.getByText(/^Gone home/).first()).toBeVisible();
  await notLost(page, 'hand-over');
  expect(keys.unseen(), 'stops where the focus cannot be seen').toEqual([]);
});
