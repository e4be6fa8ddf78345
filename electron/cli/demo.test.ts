import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import wall from '../../assets/demo/wall.json' with { type: 'json' };
import { walletOf } from '../service/dataFolder.ts';
import type { CliCommand } from './command.ts';
import { demo } from './demo.ts';
import { parts } from './parts.ts';
import { verify } from './verify.ts';

const folder = mkdtempSync(join(tmpdir(), 'knowngood-demo-data-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function ask(command: CliCommand, ...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const code = await command.run(args, {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async (path) => new Uint8Array(await readFile(path)),
  });
  return { code, out, err };
}

const refused = async (data: string) => {
  const answer = await ask(demo, '--data', data);
  expect(answer.code).toBe(2);
  expect(answer.out).toEqual([]);
  return answer.err.join('\n');
};

describe('knowngood demo --data DIR', () => {
  it('keeps its shop there and the wallet beside it, and the other commands open it', async () => {
    const data = join(folder, 'ours', 'shop');
    const told = await ask(demo, '--data', data);
    expect(told).toMatchObject({ code: 0, err: [] });
    const wallet = `${data}.wallet.key`;
    expect(told.out.at(-1)).toBe(`Shop: ${data}; the wallet that opens it: ${wallet}`);
    expect(statSync(wallet).mode & 0o077).toBe(0);
    expect(readdirSync(data)).toEqual(expect.arrayContaining(['keys.db', 'shop.db']));
    expect((await ask(verify, '--data', data)).code).toBe(0);
    const found = await ask(parts, 'where', wall[0]?.tag ?? '', '--data', `${data}/`);
    expect(found).toMatchObject({ code: 0, err: [] });
    expect(await refused(data)).toBe(
      `${data} is not empty. Nothing was changed; name a folder that is empty or not there yet.`,
    );
    expect((await ask(verify, '--data', data)).code).toBe(0);
  }, 60_000);

  it('leaves a folder with anything in it as it is', async () => {
    const data = join(folder, 'full');
    mkdirSync(data);
    writeFileSync(join(data, 'letter.txt'), 'ours');
    expect(await refused(data)).toContain(`${data} is not empty.`);
    expect(readdirSync(data)).toEqual(['letter.txt']);
    expect(existsSync(`${data}.wallet.key`)).toBe(false);
  });

  it('never puts a shop under the wallet of another', async () => {
    const data = join(folder, 'gone');
    writeFileSync(`${data}.wallet.key`, 'the wallet of another');
    expect(await refused(data)).toContain(`${data}.wallet.key, the wallet of another shop,`);
    expect(existsSync(data)).toBe(false);
    expect(readFileSync(`${data}.wallet.key`, 'utf8')).toBe('the wallet of another');
  });

  it('says of a file that it is no folder, and of a folder below one that it cannot be written', async () => {
    const file = join(folder, 'file');
    writeFileSync(file, 'ours');
    expect(await refused(file)).toContain(`${file} is no folder.`);
    expect(await refused(join(file, 'shop'))).toContain('cannot be written (ENOTDIR)');
    expect(readFileSync(file, 'utf8')).toBe('ours');
  });
});

it('a shop without a wallet of its own is opened with the app’s', () => {
  expect(walletOf(join(folder, 'nowhere'), '/app')).toBe(join('/app', 'wallet.key'));
});
