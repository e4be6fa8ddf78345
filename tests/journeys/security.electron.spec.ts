import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './runtime/house.ts';
import { expect, rough as test } from './runtime/journey.ts';
import { SWITCHES } from './runtime/launchElectron.ts';
import { openInElectron } from './runtime/openApp.ts';
import { setUpShop } from './runtime/setUpShop.ts';

test('the page has no Node, and the window is sandboxed and isolated', async ({ app }) => {
  expect(
    await app.page.evaluate(() => [
      typeof Reflect.get(window, 'require'),
      typeof Reflect.get(window, 'process'),
      typeof Reflect.get(window, 'module'),
    ]),
  ).toEqual(['undefined', 'undefined', 'undefined']);
  const set = await app.electron?.evaluate(({ BrowserWindow }) => {
    const [window] = BrowserWindow.getAllWindows();
    const contents = window?.webContents as unknown as { getLastWebPreferences(): Record<string, unknown> };
    return contents.getLastWebPreferences();
  });
  expect(set).toMatchObject({ sandbox: true, contextIsolation: true, nodeIntegration: false, webSecurity: true });
});

test('the page comes with the policy, and no answer without it', async ({ app }) => {
  const policies = await app.page.evaluate(async () => {
    const [page, lost] = await Promise.all([fetch(location.origin), fetch(`${location.origin}/nowhere.js`)]);
    return [page, lost].map((answer) => answer.headers.get('content-security-policy') ?? '');
  });
  for (const policy of policies) expect(policy).toContain("script-src 'self';");
});

test('the page can open no window and go nowhere else', async ({ app }) => {
  const { page } = app;
  await expect(page.getByLabel('Name of the shop')).toBeVisible();
  expect(await page.evaluate(() => window.open('https://shop.example/'))).toBeNull();
  for (const elsewhere of ['https://shop.example/', 'data:text/html,elsewhere', 'file:///etc/hostname']) {
    await page.evaluate((address) => {
      location.href = address;
    }, elsewhere);
    await page.waitForTimeout(300);
  }
  const shown = await app.electron?.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows().map((window) => window.webContents.getURL()),
  );
  expect(shown).toEqual([expect.stringMatching(/^app:\/\/knowngood\//)]);
  expect(await page.evaluate(() => document.querySelector('h1')?.textContent)).toBe('Set up the shop');
});

test('the camera’s picture is allowed to our page, and nothing else', async ({ app }) => {
  const answers = await app.page.evaluate(async () => {
    const media = (wanted: MediaStreamConstraints) =>
      navigator.mediaDevices.getUserMedia(wanted).then(
        (stream) => {
          for (const track of stream.getTracks()) track.stop();
          return 'given';
        },
        (error: DOMException) => error.name,
      );
    const state = async (name: string) => (await navigator.permissions.query({ name: name as PermissionName })).state;
    return {
      picture: await media({ video: true }),
      sound: await media({ audio: true }),
      both: await media({ audio: true, video: true }),
      place: await state('geolocation'),
      clipboard: await state('clipboard-read'),
      notices: await Notification.requestPermission(),
      midi: await navigator.requestMIDIAccess().then(
        () => 'given',
        () => 'refused',
      ),
    };
  });
  expect(answers).toEqual({
    picture: 'given',
    sound: 'NotAllowedError',
    both: 'NotAllowedError',
    place: 'denied',
    clipboard: 'denied',
    notices: 'denied',
    midi: 'refused',
  });
});

test('nonsense through a port brings nobody down', async ({ app }) => {
  await app.page.evaluate(
    () =>
      new Promise<void>((done) => {
        window.addEventListener('message', ({ data, ports: [port] }) => {
          if (data !== 'knowngood:port' || !port) return;
          port.start();
          for (const nonsense of [
            '',
            '{',
            '[]',
            '{"i":"1"}',
            'null',
            7,
            null,
            { i: 1 },
            new Uint8Array([255, 0]),
            { say: 'end' },
          ])
            port.postMessage(nonsense);
          setTimeout(done, 300);
        });
        window.postMessage('knowngood:port-wanted', location.origin);
      }),
  );
  await setUpShop(app.page);
  await expect(app.page.getByRole('navigation')).toBeVisible();
});

test('when the service is killed it is started anew, and the window goes on without being touched', async ({ app }) => {
  await setUpShop(app.page);
  await expect(app.page.getByRole('navigation')).toBeVisible();
  const holder = () => JSON.parse(readFileSync(join(app.data, 'service.lock'), 'utf8')) as { pid: number };
  const killed = holder().pid;
  process.kill(killed, 'SIGKILL');
  await expect.poll(() => holder().pid, { timeout: 15_000 }).not.toBe(killed);
  await expect(app.page.getByRole('status').filter({ hasText: /\S/ })).toHaveCount(0);
  const { page } = app;
  await page.reload();
  await expect(page.getByRole('navigation')).toBeVisible();
});

test('a second start on the same shop leaves it to the first', async ({ app }) => {
  const second = spawn(process.env.KNOWNGOOD_TEST_ELECTRON ?? '', [root, ...SWITCHES, '--data', app.data], {
    env: { ...process.env, XDG_CONFIG_HOME: app.config },
    stdio: 'ignore',
  });
  expect(await once(second, 'exit')).toEqual([0, null]);
  await expect(app.page.getByLabel('Name of the shop')).toBeVisible();
});

test('a file that is not ours is left as it is, and the window says so, where, and two ways out', async () => {
  const data = mkdtempSync(join(tmpdir(), 'knowngood-foreign-'));
  writeFileSync(join(data, 'shop.db'), 'somebody else’s notes');
  const app = await openInElectron({ data });
  await expect(app.page.getByRole('heading', { level: 1 })).toHaveText('The shop’s data could not be opened');
  await expect(app.page.getByText(join(data, 'shop.db'), { exact: true })).toBeVisible();
  await expect(app.page.getByText('Nothing was changed.')).toBeVisible();
  await expect(app.page.getByRole('listitem')).toHaveCount(2);
  expect(await app.page.locator('script').count()).toBe(0);
  await app.close();
  expect(readdirSync(data)).toEqual(['shop.db']);
  expect(readFileSync(join(data, 'shop.db'), 'utf8')).toBe('somebody else’s notes');
  expect(existsSync(join(data, 'keys.db'))).toBe(false);
  rmSync(data, { recursive: true });
});
