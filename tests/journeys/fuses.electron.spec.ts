import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { expect, test } from '@playwright/test';
import fuses from '../../electron/shipped/fuses.json' with { type: 'json' };
import { root, serviceNode } from './runtime/house.ts';
import { SWITCHES } from './runtime/launchElectron.ts';

const given = process.env.KNOWNGOOD_TEST_ELECTRON ?? '';
test.describe.configure({ timeout: 120_000 });

/** What a program prints when it is asked to be a Node. */
const asNode = (program: string, folder: string) =>
  spawnSync(program, ['-e', 'process.stdout.write("ran as Node")'], {
    cwd: folder,
    env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
    timeout: 8000,
    killSignal: 'SIGKILL',
    encoding: 'utf8',
  }).stdout;

test('with the switches set as the build has them, read back, the app starts, and is no Node and no debugger', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-fuses-'));
  cpSync(dirname(given), join(folder, 'electron'), { recursive: true });
  const program = join(folder, 'electron', basename(given));
  expect(asNode(program, folder)).toBe('ran as Node');

  const script = join(root, 'electron', 'shipped', 'setFuses.ts');
  const said = execFileSync(serviceNode, [script, program], { cwd: root, encoding: 'utf8' });
  const wanted = Object.entries(fuses).map(([name, { on }]) => `${name} ${on ? 'on' : 'off'}`);
  expect(said.trim().split('\n').toSorted()).toEqual(wanted.toSorted());
  expect(asNode(program, folder)).not.toContain('ran as Node');

  const data = join(folder, 'shop');
  const app = spawn(program, [root, ...SWITCHES, '--inspect=0', '--data', data], {
    env: {
      ...process.env,
      XDG_CONFIG_HOME: join(folder, 'config'),
      KNOWNGOOD_SERVICE_NODE: serviceNode,
      NODE_OPTIONS: '--title=ours',
    },
  });
  let told = '';
  app.stderr.setEncoding('utf8').on('data', (text) => {
    told += text;
  });
  await expect.poll(() => existsSync(join(data, 'shop.db')), { timeout: 60_000 }).toBe(true);
  expect(told).not.toContain('Debugger listening');
  app.kill('SIGTERM');
  await once(app, 'exit');
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});
