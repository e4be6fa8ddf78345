import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import bwip from 'bwip-js/node';
import { checkCharacter } from '../../core/custody/tag.ts';
import { accessibilityFaults } from './runtime/accessibilityFaults.ts';
import { openInBrowser } from './runtime/openApp.ts';
import { setUpShop } from './runtime/setUpShop.ts';
import { burst } from './scanHands.ts';

const GREY = 128;
const OTHER_TAG = `M4CW7P${checkCharacter('M4CW7P')}`;
const [WIDTH, HEIGHT] = [640, 480];

/** A film of one still, as Chromium takes it for a camera: the code of this text in the middle of white. */
function filmOf(text: string): Buffer {
  const raw = (bwip as unknown as { raw: (options: object) => readonly { pixs: number[]; pixx: number }[] }).raw;
  const [code] = raw({ bcid: 'qrcode', text, eclevel: 'M' });
  if (!code) throw new Error('no code');
  const module = 10;
  const [left, top] = [(WIDTH - code.pixx * module) / 2, (HEIGHT - code.pixx * module) / 2];
  const light = Buffer.alloc(WIDTH * HEIGHT, 235);
  for (let y = 0; y < code.pixx * module; y += 1)
    for (let x = 0; x < code.pixx * module; x += 1)
      if (code.pixs[Math.floor(y / module) * code.pixx + Math.floor(x / module)])
        light[Math.floor(top + y) * WIDTH + Math.floor(left + x)] = 16;
  const colour = Buffer.alloc((WIDTH * HEIGHT) / 2, GREY);
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`);
  return Buffer.concat([
    head,
    ...Array.from({ length: 10 }, () => Buffer.concat([Buffer.from('FRAME\n'), light, colour])),
  ]);
}

for (const [what, text, says] of [
  ['a tag that nothing hangs on yet', 'K7R4TMX', 'No tag K7R4TMX was issued here.'],
  ['a tag with a wrong check character', 'K7R4TMY', 'its check character does not fit'],
] as const) {
  test(`the camera reads ${what}`, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'knowngood-film-'));
    const film = join(folder, 'tag.y4m');
    writeFileSync(film, filmOf(text));
    const switches = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];
    const app = await openInBrowser({ switches: [...switches, `--use-file-for-fake-video-capture=${film}`] });
    await setUpShop(app.page);
    await app.page.getByRole('button', { name: 'Read a tag' }).click();
    await expect(app.page.getByText(says)).toBeVisible();
    expect(await accessibilityFaults(app), 'camera').toEqual([]);
    expect(app.complaints).toEqual([]);
    await app.close();
    rmSync(folder, { recursive: true, force: true });
  });
}

test('without a camera a picture of the tag is read, and the camera’s place says so', async () => {
  const app = await openInBrowser();
  await setUpShop(app.page);
  await app.page.getByRole('button', { name: 'Read a tag' }).click();
  await expect(app.page.getByText('There is no camera here')).toBeVisible();
  const picture = await bwip.toBuffer({
    bcid: 'qrcode',
    text: 'K7R4TMX',
    scale: 6,
    paddingwidth: 12,
    paddingheight: 12,
    backgroundcolor: 'ffffff',
  });
  const file = app.page.getByLabel('Or read a picture of it');
  await file.setInputFiles({ name: 'tag.png', mimeType: 'image/png', buffer: picture });
  await expect(app.page.getByText('No tag K7R4TMX was issued here.')).toBeVisible();
  await expect(app.page.getByRole('dialog')).toHaveCount(0);
  await app.close();
});

test('fifteen scans in a field being typed in leave the typing whole, and none is lost', async () => {
  test.setTimeout(120_000);
  const app = await openInBrowser();
  await setUpShop(app.page);
  const { page } = app;
  const field = page.getByRole('combobox').or(page.getByRole('searchbox')).first();
  await field.click();
  for (let one = 0; one < 15; one += 1) {
    await page.keyboard.type('ab7 ', { delay: 60 });
    await page.waitForTimeout(300);
    const tag = one % 2 === 0 ? 'K7R4TMX' : OTHER_TAG;
    await burst(page, tag, { late: one % 5 === 4 ? 400 : 0 });
    await expect(page.getByText(`No tag ${tag} was issued here.`)).toBeVisible();
  }
  await page.waitForTimeout(320);
  expect(await field.inputValue()).toBe('ab7 '.repeat(15));
  await app.close();
});
