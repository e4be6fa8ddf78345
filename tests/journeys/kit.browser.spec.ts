import assert from 'node:assert/strict';
import AxeBuilder from '@axe-core/playwright';
import { type Browser, chromium, expect, type Page, test } from '@playwright/test';
import { chromiumPath, type Gallery, openGallery } from '../gallery/openGallery.ts';
import { burst } from './scanHands.ts';

/** The controls as a person uses them (keys, mouse, pen, scanner), on the gallery's pages of invented content. */
test.describe.configure({ mode: 'default' });
let gallery: Gallery;
let browser: Browser;

test.beforeAll(async () => {
  gallery = await openGallery();
  browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox'] });
});
test.afterAll(async () => {
  await browser.close();
  await gallery.close();
});

function inGallery(what: string, show: string, use: (page: Page) => Promise<void>): void {
  test(what, async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
    const page = await context.newPage();
    await page.goto(gallery.page(show));
    await page.waitForSelector('#root > *');
    await page.evaluate(() => document.fonts.ready.then(() => true));
    await use(page);
    await context.close();
  });
}
const scanned = (page: Page) => page.locator('[data-scanned]').getAttribute('data-scanned');
const said = (page: Page) => page.locator('[data-said]').getAttribute('data-said');

inGallery('a scan with the cursor in a field is heard and leaves the field as it was', 'keys', async (page) => {
  const name = page.getByLabel('Name', { exact: true });
  await name.click();
  await burst(page, 'F6C6KA5');
  await page.waitForTimeout(320);
  assert.equal(await name.inputValue(), 'Judith Amberley');
  assert.equal(await scanned(page), 'F6C6KA5');
});
inGallery('typing goes into the field whole, however fast, with what stands in no tag', 'keys', async (page) => {
  const name = page.getByLabel('Name', { exact: true });
  await name.fill('');
  await name.click();
  for (const delay of [0, 20, 60, 110]) await page.keyboard.type('quick brown fox 123 ', { delay });
  await page.waitForTimeout(320);
  assert.equal(await name.inputValue(), 'quick brown fox 123 '.repeat(4));
  assert.equal(await scanned(page), '');
});
inGallery('a scan over the outcomes presses none of them, a digit by hand does', 'bench', async (page) => {
  await page.getByRole('button', { name: /Both channels start/ }).focus();
  await burst(page, '5MWH39J');
  await burst(page, '5MWH39J', { late: 600 });
  await page.waitForTimeout(320);
  assert.equal(await said(page), '');
  await page.keyboard.press('2', { delay: 80 });
  await page.waitForTimeout(320);
  assert.equal(await said(page), 'same');
  await page.keyboard.press('0', { delay: 80 });
  await page.waitForTimeout(320);
  assert.equal(await said(page), 'else');
});
inGallery('digits press no outcome while the focus is elsewhere', 'bench', async (page) => {
  await page.getByRole('button', { name: 'Start', exact: true }).focus();
  await page.keyboard.press('1', { delay: 80 });
  await page.waitForTimeout(320);
  assert.equal(await said(page), '');
});
inGallery('a part moves by two presses: the disk onto bench 1', 'bench', async (page) => {
  await page.getByRole('button', { name: /^SATA 1, / }).click();
  await page.getByRole('button', { name: 'Bench 1: 0' }).click();
  assert.equal(await said(page), 'disk {"to":"place","place":"bench 1"}');
});
inGallery('a part moves by keys alone, and Escape puts it back', 'bench', async (page) => {
  await page.getByRole('button', { name: /^SATA 1, / }).focus();
  await page.keyboard.press('Enter', { delay: 80 });
  await page.getByText('Press where it goes').waitFor();
  await page.keyboard.press('Escape');
  assert.equal(await page.getByText('Press where it goes').count(), 0);
  await page.keyboard.press('Enter', { delay: 80 });
  await page.getByRole('button', { name: /^SATA 2, / }).focus();
  await page.keyboard.press('Enter', { delay: 80 });
  assert.equal(await said(page), 'disk {"to":"slot","slot":"SATA 2"}');
});
inGallery('a part moves by drag, and a refusal is said where it was dropped', 'bench', async (page) => {
  const from = await page.getByRole('button', { name: /^SATA 1, / }).boundingBox();
  const bank = await page.getByRole('button', { name: /^Memory slots/ }).boundingBox();
  assert(from && bank);
  await page.mouse.move(from.x + 20, from.y + 20);
  await page.mouse.down();
  await page.mouse.move(from.x - 40, from.y - 60, { steps: 4 });
  await page.mouse.move(bank.x + bank.width * 0.62, bank.y + 60, { steps: 6 });
  await page.mouse.up();
  assert.equal(await said(page), 'disk {"to":"slot","slot":"B1"}');
  await page.getByRole('alert').getByText('Nothing was moved.').waitFor();
});
inGallery('the row of memory slots opens as keys of 64 px, and a DIMM moves by them', 'bench', async (page) => {
  await page.getByRole('button', { name: /^Memory slots/ }).click();
  const row = page.getByRole('group', { name: /from the processor/ });
  const key = await row.getByRole('button', { name: /^A2, / }).boundingBox();
  assert(key && key.width >= 64 && key.height >= 64);
  await row.getByRole('button', { name: /^A2, / }).click();
  await row.getByRole('button', { name: /^B2, / }).click();
  assert.equal(await said(page), 'S01 {"to":"slot","slot":"B2"}');
});
inGallery('what lies on the tray is taken up and put back into its slot', 'bench', async (page) => {
  await page.getByRole('button', { name: 'Tray 3: 4' }).click();
  await page
    .getByRole('list', { name: 'Tray 3' })
    .getByRole('button', { name: /M\.2 drive/ })
    .click();
  await page.getByRole('button', { name: /^M2_1, / }).click();
  assert.equal(await said(page), 'nvme {"to":"slot","slot":"M2_1"}');
});
inGallery('a shadow pressed twice puts its part back', 'bench', async (page) => {
  const slot = page.getByRole('button', { name: /^x16, / });
  await slot.click();
  await slot.click();
  assert.equal(await said(page), 'card {"to":"slot","slot":"x16"}');
});
inGallery('the far view opens as a dialog, keeps the focus and closes with F', 'bench&far', async (page) => {
  await page.getByRole('dialog').waitFor();
  await page.keyboard.press('Shift+f', { delay: 80 });
  await page.waitForTimeout(320);
  assert.equal(await page.getByRole('dialog').count(), 0);
});
inGallery(
  'a yes is chosen by one press and taken back by another; nothing is chosen beforehand',
  'keys',
  async (page) => {
    const film = page.getByRole('radiogroup', { name: /Film the work/ });
    assert.equal(await film.getByRole('radio', { checked: true }).count(), 0);
    await film.getByRole('radio', { name: 'yes' }).click();
    assert.equal(await film.getByRole('radio', { checked: true }).count(), 1);
    await film.getByRole('radio', { name: 'yes' }).click();
    assert.equal(await film.getByRole('radio', { checked: true }).count(), 0);
  },
);
inGallery('what changed last is chosen by one digit each', 'keys', async (page) => {
  await page.getByRole('button', { name: 'new part' }).focus();
  for (const key of ['3', '5', '3']) await page.keyboard.press(key, { delay: 80 });
  await page.waitForTimeout(320);
  const pressed = await page.locator('.k-choices [aria-pressed=true]').allInnerTexts();
  assert.deepEqual(
    pressed.map((text) => text.replace(/^\S\s*/, '')),
    ['moved', 'storm'],
  );
});
inGallery('a signature is kept as strokes, by mouse', 'papers', async (page) => {
  const field = await page.getByRole('img', { name: /^Field to sign/ }).boundingBox();
  assert(field);
  for (const dy of [0, 20]) {
    await page.mouse.move(field.x + 40, field.y + 60 + dy);
    await page.mouse.down();
    await page.mouse.move(field.x + 160, field.y + 40 + dy, { steps: 8 });
    await page.mouse.up();
  }
  assert.equal(await page.locator('[data-strokes]').getAttribute('data-strokes'), '2');
  await page.getByRole('button', { name: 'Sign again' }).click();
  assert.equal(await page.locator('[data-strokes]').getAttribute('data-strokes'), '0');
});
inGallery(
  'arrows go along the day line within a band and then to the next; a second press opens',
  'line',
  async (page) => {
    const line = page.getByRole('region', { name: 'Day line' });
    await line.getByRole('button', { name: /^Lantern press/ }).focus();
    await page.keyboard.press('ArrowRight');
    await page.waitForTimeout(60);
    assert.match(
      (await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))) ?? '',
      /^Choir office/,
    );
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(60);
    assert.match(
      (await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))) ?? '',
      /^Allotment club/,
    );
  },
);
for (const show of ['keys', 'bench', 'papers']) {
  inGallery(
    `nothing on "${show}" scrolls sideways at 640 px (200 % zoom of 1280) but strip and drawing`,
    show,
    async (page) => {
      await page.setViewportSize({ width: 640, height: 400 });
      await page.waitForTimeout(80);
      const beyond = await page.evaluate(() =>
        [...document.querySelectorAll('body *')]
          .filter(
            (element) =>
              element.getBoundingClientRect().right > innerWidth + 1 &&
              !element.closest('.k-strip-scroll, .k-heard, svg'),
          )
          .map((element) => `${element.tagName}.${element.className}`)
          .slice(0, 5),
      );
      assert.deepEqual(beyond, []);
    },
  );
}

const PAGES = [
  ['keys', 'keys&ask', 'marks', 'rules', 'line', 'papers'],
  ['bench', 'bench&nothing', 'bench&running', 'bench&far', 'wall', 'reckoning'],
];
const LOOKS = [
  { light: 'day', width: 1280, height: 800 },
  { light: 'night', width: 1920, height: 1080 },
  { light: 'forced', width: 1280, height: 800 },
] as const;
for (const [pages, { light, width, height }] of PAGES.flatMap((pages) => LOOKS.map((look) => [pages, look] as const))) {
  test(`no page of controls has an accessibility fault or an error, ${pages[0]} and so on, ${light}, ${width} × ${height}`, async () => {
    const context = await browser.newContext({
      viewport: { width, height },
      reducedMotion: 'reduce',
      ...(light === 'forced' ? { forcedColors: 'active' as const } : {}),
    });
    const page = await context.newPage();
    const wrong: string[] = [];
    page.on('pageerror', (error) => wrong.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') wrong.push(message.text());
    });
    for (const show of pages) {
      await page.goto(gallery.page(`${show}&light=${light === 'night' ? 'night' : 'day'}`));
      await page.waitForSelector('#root > *');
      // In forced colours the page is the same and its colours are the system's: there is nothing more to hold it to.
      if (light === 'forced') continue;
      const { violations } = await new AxeBuilder({ page }).analyze();
      for (const { id, nodes } of violations)
        wrong.push(`${show} ${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
    }
    await context.close();
    expect(wrong).toEqual([]);
  });
}
