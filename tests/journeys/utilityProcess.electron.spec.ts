import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { root, serviceNode } from './runtime/house.ts';
import { launchElectron } from './runtime/launchElectron.ts';

/** The built app, but for its service: that is the small one, which needs no database. */
function appWithSmallService(): string {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-utility-'));
  const dist = join(folder, 'dist');
  mkdirSync(dist);
  for (const part of ['main.cjs', 'preload.cjs', 'ui'])
    cpSync(join(root, 'dist', part), join(dist, part), { recursive: true });
  execFileSync(
    serviceNode,
    [
      join(root, 'node_modules', 'rolldown', 'bin', 'cli.mjs'),
      'tests/journeys/runtime/smallService.ts',
      '--platform',
      'node',
      '--format',
      'esm',
      '--file',
      join(dist, 'service.mjs'),
    ],
    { cwd: root, stdio: 'ignore' },
  );
  return folder;
}

test('the product’s own way, a utility process with real ports, carries calls and changes and ends in order', async () => {
  const folder = appWithSmallService();
  const app = await launchElectron(folder, ['--data', join(folder, 'shop')], {
    KNOWNGOOD_SERVICE_NODE: undefined,
    XDG_CONFIG_HOME: join(folder, 'config'),
  });
  const page = await app.firstWindow();
  const answers = await page.evaluate(
    () =>
      new Promise<unknown[]>((done) => {
        const heard: unknown[] = [];
        const own = ['door', 'bad', 'changes', 'add'];
        let begun = false;
        window.addEventListener('message', ({ data, ports: [port] }) => {
          // The page asks for its own port as well: whichever comes first serves.
          if (data !== 'knowngood:port' || !port || begun) return;
          begun = true;
          port.addEventListener('message', (event) => {
            const { i, p } = JSON.parse(event.data as string);
            const body = p.b ?? p.d;
            if (body && own.includes(i)) heard.push([i, body.json]);
            if (heard.length === 4) done(heard);
          });
          port.start();
          const call = (i: string, name: string, json?: unknown) =>
            port.postMessage(JSON.stringify({ i, p: { u: `/${name}`, b: { json } } }));
          call('door', 'door');
          call('bad', 'add', { text: '\0' });
          call('changes', 'changes', { since: 0 });
          setTimeout(() => call('add', 'add', { text: 'Kiln' }), 200);
        });
        window.postMessage('knowngood:port-wanted', location.origin);
      }),
  );
  expect(answers).toContainEqual(['door', 'window']);
  expect(answers).toContainEqual(['bad', expect.objectContaining({ code: 'BAD_REQUEST' })]);
  expect(answers).toContainEqual(['changes', { seq: 0, streams: [], kinds: [] }]);
  const processes = await app.evaluate(({ app: self }) =>
    self.getAppMetrics().map(({ type, name }) => `${type} ${name ?? ''}`),
  );
  expect(processes).toContainEqual(expect.stringContaining('knowngood-service'));
  const ended = new Promise((done) => app.process().once('exit', done));
  await app.close();
  expect(await ended).toBe(0);
  rmSync(folder, { recursive: true, force: true });
});
