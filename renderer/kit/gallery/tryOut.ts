/**
 * Uses the gallery as a person would (keys, mouse, pen, scanner) and says what did not work:
 * `node renderer/kit/gallery/tryOut.ts`. Needs a Chromium in the path.
 */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { createServer } from 'vite';

const server = await createServer({
  root: join(import.meta.dirname, '..'),
  server: { port: 0, host: '127.0.0.1' },
  logLevel: 'error',
});
await server.listen();
const address = server.resolvedUrls?.local[0];
const browser = await chromium.launch({
  executablePath: execFileSync('which', ['chromium'], { encoding: 'utf8' }).trim(),
  args: ['--no-sandbox'],
});
const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
let failed = 0;

async function tries(what: string, show: string, use: (page: Page) => Promise<void>) {
  const page = await context.newPage();
  await page.goto(`${address}gallery.html?show=${show}`);
  await page.waitForSelector('#root > *');
  try {
    await use(page);
    process.stdout.write(`works: ${what}\n`);
  } catch (error) {
    failed += 1;
    process.stdout.write(`FAILS: ${what}\n  ${String(error).split('\n').slice(0, 6).join('\n  ')}\n`);
  }
  await page.close();
}
const scan = async (page: Page, code: string) => {
  await page.keyboard.type(code, { delay: 3 });
  await page.keyboard.press('Enter');
};
const scanned = (page: Page) => page.locator('[data-scanned]').getAttribute('data-scanned');
const said = (page: Page) => page.locator('[data-said]').getAttribute('data-said');

await tries('a scan with the cursor in a field is heard and leaves the field as it was', 'keys', async (page) => {
  const name = page.getByLabel('Name', { exact: true });
  await name.click();
  await scan(page, 'F6C6KA5');
  await page.waitForTimeout(120);
  assert.equal(await name.inputValue(), 'Judith Amberley');
  assert.equal(await scanned(page), 'F6C6KA5');
});
await tries('typing goes into the field whole, however fast, with what stands in no tag', 'keys', async (page) => {
  const name = page.getByLabel('Name', { exact: true });
  await name.fill('');
  await name.click();
  for (const delay of [0, 20, 60, 110]) await page.keyboard.type('quick brown fox 123 ', { delay });
  await page.waitForTimeout(120);
  assert.equal(await name.inputValue(), 'quick brown fox 123 '.repeat(4));
  assert.equal(await scanned(page), '');
});
await tries('a scan over the outcomes presses none of them, a digit by hand does', 'bench', async (page) => {
  await page.getByRole('button', { name: /Both channels start/ }).focus();
  await scan(page, '5MWH39J');
  await page.waitForTimeout(120);
  assert.equal(await said(page), '');
  await page.keyboard.press('2', { delay: 80 });
  await page.waitForTimeout(120);
  assert.equal(await said(page), 'same');
  await page.keyboard.press('0', { delay: 80 });
  await page.waitForTimeout(120);
  assert.equal(await said(page), 'else');
});
await tries('digits press no outcome while the focus is elsewhere', 'bench', async (page) => {
  await page.getByRole('button', { name: 'Start', exact: true }).focus();
  await page.keyboard.press('1', { delay: 80 });
  await page.waitForTimeout(120);
  assert.equal(await said(page), '');
});
await tries('a part moves by two presses: the disk onto bench 1', 'bench', async (page) => {
  await page.getByRole('button', { name: /^SATA 1, / }).click();
  await page.getByRole('button', { name: 'Bench 1: 0' }).click();
  assert.equal(await said(page), 'disk {"to":"place","place":"bench 1"}');
});
await tries('a part moves by keys alone, and Escape puts it back', 'bench', async (page) => {
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
await tries('a part moves by drag, and a refusal is said where it was dropped', 'bench', async (page) => {
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
await tries('the row of memory slots opens as keys of 64 px, and a DIMM moves by them', 'bench', async (page) => {
  await page.getByRole('button', { name: /^Memory slots/ }).click();
  const row = page.getByRole('group', { name: /from the processor/ });
  const key = await row.getByRole('button', { name: /^A2, / }).boundingBox();
  assert(key && key.width >= 64 && key.height >= 64);
  await row.getByRole('button', { name: /^A2, / }).click();
  await row.getByRole('button', { name: /^B2, / }).click();
  assert.equal(await said(page), 'S01 {"to":"slot","slot":"B2"}');
});
await tries('what lies on the tray is taken up and put back into its slot', 'bench', async (page) => {
  await page.getByRole('button', { name: 'Tray 3: 4' }).click();
  await page
    .getByRole('list', { name: 'Tray 3' })
    .getByRole('button', { name: /M\.2 drive/ })
    .click();
  await page.getByRole('button', { name: /^M2_1, / }).click();
  assert.equal(await said(page), 'nvme {"to":"slot","slot":"M2_1"}');
});
await tries('a shadow pressed twice puts its part back', 'bench', async (page) => {
  const slot = page.getByRole('button', { name: /^x16, / });
  await slot.click();
  await slot.click();
  assert.equal(await said(page), 'card {"to":"slot","slot":"x16"}');
});
await tries('the far view opens as a dialog, keeps the focus and closes with F', 'bench&far', async (page) => {
  await page.getByRole('dialog').waitFor();
  await page.keyboard.press('Shift+f');
  await page.waitForTimeout(120);
  assert.equal(await page.getByRole('dialog').count(), 0);
});
await tries(
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
await tries('what changed last is chosen by one digit each', 'keys', async (page) => {
  await page.getByRole('button', { name: 'new part' }).focus();
  for (const key of ['3', '5', '3']) await page.keyboard.press(key, { delay: 80 });
  await page.waitForTimeout(120);
  const pressed = await page.locator('.k-choices [aria-pressed=true]').allInnerTexts();
  assert.deepEqual(
    pressed.map((text) => text.replace(/^\S\s*/, '')),
    ['moved', 'storm'],
  );
});
await tries('a signature is kept as strokes, by mouse', 'papers', async (page) => {
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
await tries(
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
  await tries(
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

await browser.close();
await server.close();
process.exitCode = failed === 0 ? 0 : 1;
