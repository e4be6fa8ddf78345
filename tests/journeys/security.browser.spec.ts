import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serviceNode, serviceScript } from './runtime/house.ts';
import { expect, rough as test } from './runtime/journey.ts';
import { openInBrowser } from './runtime/openApp.ts';

let foreign: Server;
let foreignPage = '';
/** What the foreign page shows; it is on this computer too, so the browser sends it and us the same cookies. */
let content = '';

test.beforeEach(async () => {
  foreign = createServer((_request, response) => response.setHeader('Content-Type', 'text/html').end(content));
  await once(foreign.listen(0, '127.0.0.1'), 'listening');
  foreignPage = `http://127.0.0.1:${(foreign.address() as AddressInfo).port}/`;
});
test.afterEach(() => void foreign.close());

test('a form that another page sends by itself changes nothing', async ({ app }) => {
  const { origin } = new URL(app.page.url());
  const asked = { command: 'forged', by: 'nobody', name: 'setUpShop', input: {} };
  content = `<form method="post" enctype="multipart/form-data" action="${origin}/rpc/execute">
    <input name="data" value='${JSON.stringify({ json: asked })}'></form><script>document.forms[0].submit()</script>`;
  const other = await app.context.newPage();
  const answer = other.waitForResponse(`${origin}/rpc/execute`);
  await other.goto(foreignPage);
  expect((await answer).status()).toBe(403);
  await app.page.reload();
  await expect(app.page.getByLabel('Name of the shop')).toBeVisible();
});

test('a call another page makes by script is turned away, with or without our mark', async ({ app }) => {
  const { origin } = new URL(app.page.url());
  const other = await app.context.newPage();
  await other.goto(foreignPage);
  const read = await other.evaluate(async (address) => {
    const plain = fetch(`${address}/rpc/shop`, { method: 'POST', body: '{}', credentials: 'include' });
    const marked = fetch(`${address}/rpc/shop`, {
      method: 'POST',
      headers: { 'x-csrf-token': 'orpc' },
      credentials: 'include',
    });
    return Promise.all(
      [plain, marked].map((call) =>
        call.then(
          () => 'read',
          () => 'refused',
        ),
      ),
    );
  }, origin);
  expect(read).toEqual(['refused', 'refused']);
});

test('another page cannot show ours in a frame', async ({ app }) => {
  const { origin } = new URL(app.page.url());
  content = `<iframe src="${origin}/"></iframe>`;
  const other = await app.context.newPage();
  await other.goto(foreignPage);
  await other.waitForTimeout(500);
  const [, framed] = other.frames();
  expect(framed?.url()).toMatch(/^chrome-error:/);
});

test('the address opens once: another browser with it sees only that', async ({ app }) => {
  const browser = app.context.browser();
  const stranger = await browser?.newContext();
  const page = await stranger?.newPage();
  await page?.goto(app.address ?? '');
  await expect(page?.getByRole('heading') ?? app.page.getByText('never')).toHaveText('This address opens once');
  await page?.goto(new URL(app.page.url()).origin);
  await expect(page?.getByRole('heading') ?? app.page.getByText('never')).toHaveText('This address opens once');
});

test('a name made to point here (DNS rebinding) is not served', async () => {
  const app = await openInBrowser({ switches: ['--host-resolver-rules=MAP shop.example 127.0.0.1'] });
  const { port } = new URL(app.page.url());
  const answer = app.page.waitForResponse((response) => response.url().startsWith('http://shop.example'));
  await app.page.goto(`http://shop.example:${port}/`).catch(() => undefined);
  expect((await answer).status()).toBe(421);
  await app.close();
});

test('our page may use the camera only, by its own policy too', async ({ app }) => {
  const answer = await app.page.reload();
  expect(answer?.headers()['permissions-policy']).toContain('camera=(self), microphone=()');
});

test('in a terminal, a shop that cannot be opened says why, where and two ways out, and ends with 2', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-foreign-'));
  writeFileSync(join(folder, 'shop.db'), 'somebody else’s notes');
  const child = spawn(serviceNode, [serviceScript, '--http', '0', '--data', folder], {
    env: { ...process.env, XDG_CONFIG_HOME: join(folder, 'config') },
  });
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text) => {
    said += text;
  });
  expect(await once(child, 'exit')).toEqual([2, null]);
  expect(said).toContain(join(folder, 'shop.db'));
  expect(said).toMatch(/Nothing was changed\.\nTwo ways out:\n {2}1\. .+\n {2}2\. .+/);
  rmSync(folder, { recursive: true });
});
