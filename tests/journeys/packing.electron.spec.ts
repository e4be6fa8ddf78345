import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { textOfStored, toBeStored } from '../../db/journal/storedBytes.ts';
import { PACKED_BY, pack, unpack } from '../../db/packing/values.ts';
import { root, serviceNode } from './runtime/house.ts';
import { launchElectron } from './runtime/launchElectron.ts';

type Said = { readonly electron: string | null; readonly value: string; readonly entry: string };

test('what is packed in a utility process of Electron is read in Node, and what is packed in Node there', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'knowngood-packed-'));
  const script = join(folder, 'packed.mjs');
  const bundler = join(root, 'node_modules', 'rolldown', 'bin', 'cli.mjs');
  const asked = ['tests/journeys/runtime/packedInElectron.ts', '--platform', 'node', '--format', 'esm'];
  execFileSync(serviceNode, [bundler, ...asked, '--file', script], { cwd: root, stdio: 'ignore' });
  const app = await launchElectron(root, ['--data', join(folder, 'shop')], {
    KNOWNGOOD_SERVICE_NODE: serviceNode,
    XDG_CONFIG_HOME: join(folder, 'config'),
  });
  await app.firstWindow();
  const text = JSON.stringify({ kind: 'paper-named', says: 'The picture came back with the other module. '.repeat(9) });
  const plain = Buffer.from(text, 'utf8');
  const packed = [pack(plain) ?? Buffer.alloc(0), toBeStored(plain)].map((bytes) => bytes.toString('base64url'));
  const said = await app.evaluate(
    ({ utilityProcess }, given) =>
      new Promise<Said>((done) => {
        utilityProcess.fork(given.script, given.args).on('message', (message: Said) => done(message));
      }),
    { script, args: [text, ...packed] },
  );
  expect(said).toMatchObject({ electron: expect.stringMatching(/^\d+\./), fromElsewhere: [text, text] });
  expect(unpack(Buffer.from(said.value, 'base64url'), PACKED_BY)?.toString('utf8')).toBe(text);
  expect(textOfStored(Buffer.from(said.entry, 'base64url'))).toBe(text);
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});
