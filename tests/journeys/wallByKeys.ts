import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { Tag } from '../../core/custody/part.ts';
import { checkCharacter, formatTag } from '../../core/custody/tag.ts';
import { readPdf } from '../builders/papers/readPdf.ts';
import type { Keys } from './byKeys.ts';
import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { expect } from './runtime/journey.ts';
import type { OpenedApp } from './runtime/openApp.ts';
import { scan } from './scanHands.ts';

const OWNER = 'Judith Amberley';
const UNKNOWN = 'K7R4TMX';
const CARD = '5RDPX7X';
const OLD_CARD = 'RRH3A3R';
const FAN = '6RKW6TD';
const NEW_TAG = `M4CW7P${checkCharacter('M4CW7P')}` as Tag;
const METER = 'TEJ56MX';

/** Nothing is found wrong with what is open, by day and by night. */
async function cleanInBothLights(app: OpenedApp, what: string): Promise<void> {
  for (const colorScheme of ['dark', 'light'] as const) {
    await app.page.emulateMedia({ colorScheme });
    expect(await accessibilityFaults(app), `${what}, ${colorScheme}`).toEqual([]);
  }
}

/** Everything that is done with a part of ours at the Wall, by keyboard and scanner alone. */
export async function wallByKeys(app: OpenedApp, keys: Keys): Promise<void> {
  const { page } = app;
  await keys.reach(page.getByRole('link', { name: 'Wall' }));
  await page.keyboard.press('Enter');
  const chosen = async (tag: string, name: string) => {
    const deeds = page.getByRole('region', { name, exact: true });
    await scan(page, tag, deeds);
    return deeds;
  };
  const deed = (name: string) => keys.press(page.getByRole('radio', { name, exact: true }));

  const card = await chosen(OLD_CARD, 'Brindle 30');
  await deed('Join it to another');
  await keys.press(page.getByRole('radiogroup', { name: 'With which' }).getByRole('radio', { name: 'Brindle 150' }));
  await keys.press(page.getByRole('button', { name: 'Join them' }));
  await expect(card).toContainText('with the part it moves with');
  await deed('Split it off');
  await expect(card).toContainText('in bin W2');
  await deed('To another bin or into a rig');
  await keys.write(page.getByRole('textbox', { name: 'Bin', exact: true }), 'W9');
  await keys.press(page.getByRole('button', { name: 'Put it there' }));
  await expect(card).toContainText('in bin W9');

  await factsAndTag(app, keys, card, deed);

  const proved = await chosen(CARD, 'Brindle 150');
  await deed('It works');
  await keys.press(page.getByRole('button', { name: 'under load' }));
  await keys.press(page.getByRole('button', { name: 'It is known-good' }));
  await expect(proved).toContainText(/Known-good \(starts and under load\): shown second rig.*It holds until/);

  await lendAndTakeBack(app, keys, await chosen(METER, 'Multimeter'), deed);

  await chosen(FAN, 'Case fan 120');
  await deed('Sell or give it away');
  await keys.write(page.getByRole('textbox', { name: 'Price', exact: true }), '6');
  await keys.press(page.getByRole('button', { name: 'Sold' }));
  await expect(page.getByRole('button', { name: /Case fan 120/ })).toHaveCount(0);
}

/** A fact that was not known is read off the card, it gets another printed tag by its scan, and fresh tags are printed. */
async function factsAndTag(
  app: OpenedApp,
  keys: Keys,
  card: ReturnType<Page['getByRole']>,
  deed: (name: string) => Promise<void>,
): Promise<void> {
  const { page } = app;
  await deed('Its facts');
  const facts = page.getByRole('form', { name: 'Facts of Brindle 30' });
  await cleanInBothLights(app, 'facts of a part');
  await keys.write(facts.getByRole('textbox', { name: 'graphics memory' }), '8');
  await keys.press(facts.getByRole('button', { name: 'Record it' }));
  await expect(facts).toHaveCount(0);

  await deed('New tag');
  await scan(page, NEW_TAG, page.locator(`input[value="${formatTag(NEW_TAG)}"]`));
  await keys.press(page.getByRole('button', { name: 'Hang this tag on it' }));
  await expect(card).toContainText(formatTag(NEW_TAG));

  await keys.press(page.getByRole('button', { name: 'Print tags' }));
  await keys.press(page.getByRole('radio', { name: 'a roll', exact: true }));
  await keys.write(page.getByRole('textbox', { name: 'Width of the roll' }), '62');
  await page.keyboard.press('Tab');
  const file = page.waitForEvent('download');
  await keys.press(page.getByRole('button', { name: 'Make the file to print' }));
  const { pages } = await readPdf(new Uint8Array(readFileSync(await (await file).path())));
  expect(pages).toBe(35);
}

/** Equipment is lent to the owner of a job, stands among what is out, and comes back unproved. */
async function lendAndTakeBack(
  app: OpenedApp,
  keys: Keys,
  meter: ReturnType<Page['getByRole']>,
  deed: (name: string) => Promise<void>,
): Promise<void> {
  const { page } = app;
  await deed('Lend it');
  await keys.press(page.getByRole('radiogroup', { name: 'Which job' }).getByRole('radio', { name: OWNER }));
  const day = page.getByLabel('Back by');
  await keys.reach(day);
  await page.keyboard.type('01022029');
  await expect(day).toHaveValue(/^2029-0[12]-0[12]$/);
  const written = await day.inputValue();
  await scan(page, UNKNOWN, page.getByText(`No tag ${UNKNOWN} was issued here.`));
  await expect(day).toHaveValue(written);
  await cleanInBothLights(app, 'lending at the Wall');
  await keys.press(page.getByRole('button', { name: 'Lend it, with its paper' }));
  await expect(meter).toContainText(`lent to`);
  await deed('Take it back');
  await expect(meter).toContainText('Untested: it was lent.');
}

/** A part is ordered with its days to give back, comes later, and is called off, by keyboard alone. */
export async function orderByKeys(app: OpenedApp, keys: Keys): Promise<void> {
  const { page } = app;
  await keys.press(page.getByRole('button', { name: 'Order a part' }));
  await keys.write(page.getByRole('textbox', { name: 'What is ordered' }), 'coin cell CR2032');
  await keys.write(page.getByRole('textbox', { name: 'From whom' }), 'Overwater Parts');
  await keys.write(page.getByRole('textbox', { name: 'Price to the owner' }), '3');
  await keys.write(page.getByRole('textbox', { name: 'Days in which they take it back' }), '14');
  await keys.press(page.getByRole('button', { name: 'Order it' }));
  const now = page.getByRole('radiogroup', { name: 'What now with coin cell CR2032' });
  await keys.press(now.getByRole('radio', { name: 'It comes later' }));
  await keys.write(page.getByRole('textbox', { name: 'What the supplier says' }), 'out of stock until Monday');
  // A late part leaves no old promise standing: another day goes with it.
  await keys.reach(page.getByLabel('New promise to the owner'));
  await page.keyboard.type('01022029');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type('0900AM');
  await expect(page.getByLabel('New promise to the owner')).toHaveValue(/^2029-0[12]-0[12]T09:00$/);
  await keys.press(page.getByRole('radio', { name: 'told', exact: true }));
  await cleanInBothLights(app, 'an order that is late');
  await keys.press(page.getByRole('button', { name: 'Record the new day' }));
  await keys.press(now.getByRole('radio', { name: 'It came' }));
  await keys.press(page.getByRole('radio', { name: 'as ordered' }));
  await keys.press(now.getByRole('radio', { name: 'Call it off' }));
  await keys.write(page.getByRole('textbox', { name: 'Why', exact: true }), 'a cell was found in the house');
  await keys.press(page.getByRole('radio', { name: 'none, the owner does not pay' }));
  await keys.press(page.getByRole('button', { name: 'Call it off' }));
  await expect(page.getByText('called off')).toBeVisible();
}
