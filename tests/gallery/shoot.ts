/**
 * Pictures of the gallery and its accessibility check: `node tests/gallery/shoot.ts [page …]`.
 * Needs a Chromium in the path. Pictures go to KIT_PICTURES, else the system's temporary folder.
 */
import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { chromium } from '@playwright/test';
import { chromiumPath, openGallery } from './openGallery.ts';

const PAGES = (
  process.argv.slice(2).length > 0
    ? process.argv.slice(2)
    : ['keys', 'marks', 'rules', 'bench', 'far', 'line', 'wall', 'papers', 'reckoning']
) as string[];
const SIZES = (process.env.KIT_SIZES ?? '1280x800,1920x1080')
  .split(',')
  .map((size) => size.split('x').map(Number) as [number, number]);
const LIGHTS = (process.env.KIT_LIGHTS ?? 'day,night').split(',');
const out = process.env.KIT_PICTURES ?? join(tmpdir(), 'kit-pictures');
mkdirSync(out, { recursive: true });

const gallery = await openGallery();
const browser = await chromium.launch({
  executablePath: chromiumPath(),
  args: ['--no-sandbox'],
});
let faults = 0;
for (const [width, height] of SIZES) {
  for (const light of LIGHTS) {
    const context = await browser.newContext({
      viewport: { width, height },
      reducedMotion: 'reduce',
      ...(light === 'forced' ? { forcedColors: 'active' as const } : {}),
    });
    for (const name of PAGES) {
      const page = await context.newPage();
      page.on('pageerror', (error) => {
        faults += 1;
        process.stdout.write(`${name}: ${error.message}\n`);
      });
      page.on('console', (message) => {
        if (message.type() !== 'error') return;
        faults += 1;
        process.stdout.write(`${name}: ${message.text()}\n`);
      });
      await page.goto(gallery.page(`${name}&light=${light === 'forced' ? 'day' : light}`));
      await page.waitForSelector('#root > *');
      await page.evaluate(() => document.fonts.ready);
      await page.waitForTimeout(250);
      await page.screenshot({ path: join(out, `${name.replace(/[&=]/g, '-')}-${width}-${light}.png`) });
      const found = await new AxeBuilder({ page }).analyze();
      for (const violation of found.violations) {
        faults += 1;
        process.stdout.write(`${name} ${width} ${light}: ${violation.id}, ${violation.help}\n`);
        for (const node of violation.nodes.slice(0, 4))
          process.stdout.write(
            `  ${node.target.join(' ')}\n  ${node.failureSummary?.split('\n').slice(1).join(' ')}\n`,
          );
      }
      await page.close();
    }
    await context.close();
  }
}
await browser.close();
await gallery.close();
process.stdout.write(`${faults === 0 ? 'nothing found' : `${faults} faults`}, pictures in ${out}\n`);
process.exitCode = faults === 0 ? 0 : 1;
