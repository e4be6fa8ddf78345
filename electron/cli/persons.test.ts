import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { saidBy } from '../../tests/builders/theCommandLine.ts';
import { runDemo } from './demo/runDemo.ts';
import { person } from './persons.ts';

const around = mkdtempSync(join(tmpdir(), 'knowngood-person-'));
const data = join(around, 'shop');
let owner = '';
beforeAll(async () => {
  vi.stubEnv('XDG_CONFIG_HOME', join(around, 'account'));
  const told = await runDemo({
    out: null,
    machine: null,
    print: () => undefined,
    kept: { data, wallet: join(around, 'shop.wallet.key') },
  });
  owner = told.ended?.job.owner ?? '';
}, 90_000);
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(around, { recursive: true, force: true });
});
const asked = (...args: string[]) => saidBy(person, [...args, '--data', data]);

describe('knowngood person', { timeout: 60_000 }, () => {
  it('finds an owner by name and by telephone, and nobody by what nobody has', async () => {
    for (const text of ['amberley', '07700 900 143'])
      expect(await asked('find', text), text).toMatchObject({ code: 0, out: `${owner}  Judith Amberley, 1 job` });
    expect(await asked('find', 'Nobody')).toMatchObject({ code: 2, err: expect.stringContaining('Nobody is known') });
  });

  it('hands out all that is held, into an empty folder only', async () => {
    const out = join(around, 'out');
    expect(await asked('export', owner, '--out', out)).toMatchObject({ code: 0 });
    expect(readdirSync(out).filter((name) => name.endsWith('.pdf')).length).toBeGreaterThan(5);
    expect(readFileSync(join(out, 'person.json'), 'utf8')).toContain('Judith Amberley');
    expect(await asked('export', owner, '--out', out)).toMatchObject({
      code: 2,
      err: expect.stringContaining('is not empty'),
    });
    expect(await asked('export', owner)).toMatchObject({ code: 2 });
    expect(await asked('export', 'nobody', '--out', join(around, 'none'))).toMatchObject({ code: 2 });
  });

  it('erases once it was read what goes and what stays, for one who keeps the shop', async () => {
    const only = await asked('erase', owner);
    expect(only).toMatchObject({ code: 1, out: expect.stringMatching(/goes: name, .*\n {2}stays until 20\d\d-01-01/) });
    expect(await asked('erase', owner, '--by', 'nobody', '--yes', 'for-ever')).toMatchObject({ code: 2 });
    expect((await asked('find', 'amberley')).code).toBe(0);
    expect(await asked('erase', owner, '--by', 'bram', '--yes', 'for-ever')).toMatchObject({
      code: 0,
      out: expect.stringContaining('Erased for ever'),
    });
    expect((await asked('find', 'amberley')).code).toBe(2);
    expect((await asked('due')).out).toMatch(/nobody’s/);
  });

  it.each([[[]], [['due', 'x']], [['find']], [['take', 'x']]])('asked for %j says what may be asked', async (args) => {
    expect(await asked(...args)).toMatchObject({ code: 2, err: expect.stringMatching(/^Ask for one of/) });
  });
});
