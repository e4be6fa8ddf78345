import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { givesHash, hashSecret } from '../../electron/service/people/secretHash.ts';
import { root, serviceNode } from './runtime/house.ts';
import { launchElectron } from './runtime/launchElectron.ts';

type Said = { readonly own: string; readonly electron: string | null };

test('a PIN is hashed in a utility process of Electron as it is in Node, and each reads the other’s hash', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-secret-'));
  const script = join(folder, 'secret.mjs');
  const bundler = join(root, 'node_modules', 'rolldown', 'bin', 'cli.mjs');
  const asked = ['tests/journeys/runtime/secretInElectron.ts', '--platform', 'node', '--format', 'esm'];
  execFileSync(serviceNode, [bundler, ...asked, '--file', script], { cwd: root, stdio: 'ignore' });
  const app = await launchElectron(root, ['--data', join(folder, 'shop')], {
    KNOWNGOOD_SERVICE_NODE: serviceNode,
    XDG_CONFIG_HOME: join(folder, 'config'),
  });
  await app.firstWindow();
  const said = await app.evaluate(
    ({ utilityProcess }, given) =>
      new Promise<Said>((done) => {
        utilityProcess.fork(given.script, given.args).on('message', (message: Said) => done(message));
      }),
    { script, args: ['4711', '4712', await hashSecret('4711')] },
  );
  expect(said).toMatchObject({
    electron: expect.stringMatching(/^\d+\./),
    givesOwn: true,
    otherGivesOwn: false,
    givesElsewhere: true,
    otherGivesElsewhere: false,
  });
  expect(await givesHash('4711', said.own)).toBe(true);
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});
