import { execFile } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { chromium, expect, test } from '@playwright/test';
import { asRoot, chromiumProgram, root, serviceNode } from './runtime/house.ts';
import { serveForTest } from './runtime/serveForTest.ts';

/** A browser that notes what any other account could read of it, and what its page says. */
const NOTES = `#!/bin/sh
tr '\\0' '\\n' < /proc/$$/cmdline > "$NOTED/arguments"
for word in "$@"; do case "$word" in --app=file://*) page="\${word#--app=file://}";; esac; done
cat "$page" > "$NOTED/page"
stat -c '%a' "$page" "$(dirname "$page")" > "$NOTED/modes"
dirname "$page" > "$NOTED/profile"
`;

test('the one-time address is in no program’s arguments: the browser is given a page that only this account reads', async () => {
  const noted = mkdtempSync(join(tmpdir(), 'knowngood-noted-'));
  const browser = join(noted, 'browser');
  writeFileSync(browser, NOTES);
  chmodSync(browser, 0o755);
  const address = 'http://127.0.0.1:4711/enter/a-token-of-this-test';
  const script = `import('./electron/launch/appWindow.mjs').then(({ appWindow }) => appWindow(process.env.BROWSER_HERE, process.env.ADDRESS, { env: process.env }))`;
  await promisify(execFile)(serviceNode, ['-e', script], {
    cwd: root,
    env: { ...process.env, NOTED: noted, BROWSER_HERE: browser, ADDRESS: address },
  });
  const said = (name: string) => readFileSync(join(noted, name), 'utf8');
  expect(said('arguments')).toContain('--app=file://');
  expect(said('arguments')).not.toContain('a-token-of-this-test');
  expect(said('page')).toContain(address);
  expect(said('modes')).toBe('600\n700\n');
  expect(existsSync(said('profile').trim())).toBe(false);
  rmSync(noted, { recursive: true });
});

test('from that page a browser comes in, and keeps what it came by', async () => {
  const place = mkdtempSync(join(tmpdir(), 'knowngood-led-'));
  const served = await serveForTest({ data: join(place, 'shop'), config: join(place, 'config') });
  const opens = join(place, 'open.html');
  writeFileSync(opens, `<!doctype html><meta http-equiv="refresh" content="0;url=${served.address}">`, { mode: 0o600 });
  const args = asRoot ? ['--no-sandbox'] : [];
  const browser = await chromium.launch({ executablePath: chromiumProgram(), args });
  const page = await browser.newPage();
  await page.goto(`file://${opens}`);
  await expect(page.getByLabel('Name of the shop')).toBeVisible({ timeout: 20_000 });
  expect(page.url()).toBe(`${new URL(served.address).origin}/`);
  await page.reload();
  await expect(page.getByLabel('Name of the shop')).toBeVisible();
  await browser.close();
  await served.end();
  rmSync(place, { recursive: true });
});
