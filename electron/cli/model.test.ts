import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runDemo } from './demo/runDemo.ts';
import { model } from './model.ts';

const folder = mkdtempSync(join(tmpdir(), 'knowngood-model-'));
const demo = join(folder, 'demo');
const data = join(demo, 'shop');
const copy = join(folder, 'copy');
const wallet = join(demo, 'wallet.key');

beforeAll(async () => {
  const told = await runDemo({ out: null, machine: null, print: () => undefined, folder: demo });
  if (!told.ended) throw new Error('the story did not end');
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function ask(...args: string[]) {
  const out: string[] = [];
  const err: string[] = [];
  const code = await model.run([...args, '--data', data, '--wallet', wallet], {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async (path) => new Uint8Array(await readFile(path)),
  });
  return { code, out, err };
}

function change(file: string, how: (json: { steps: { id: string; handsOn: number }[] }) => void): void {
  const path = join(copy, file);
  const json = JSON.parse(readFileSync(path, 'utf8'));
  how(json);
  writeFileSync(path, JSON.stringify(json));
}
const railMinutes = (minutes: number) =>
  change('steps.json', ({ steps }) => {
    const rails = steps.find((one) => one.id === 'meas-rails');
    if (rails) rails.handsOn = minutes;
  });

describe('knowngood model', () => {
  it('copies the model as delivered, once', async () => {
    expect((await ask('show')).out[0]).toBe('In use: the model as delivered.');
    expect(await ask('copy', copy)).toMatchObject({ code: 0, err: [] });
    expect(readdirSync(copy).length).toBe(13);
    expect(await ask('copy', copy)).toMatchObject({ code: 2, out: [] });
    expect((await ask('check', copy)).out[0]).toMatch(/^It holds together: \d+ faults, \d+ steps\.$/);
    expect((await ask('diff', copy)).out).toEqual(['No difference.']);
    expect((await ask('use', copy, '--name', 'ours')).code).toBe(2);
  });

  it('names file and field of a careless change, and does not take it into use', async () => {
    railMinutes(-6);
    const checked = await ask('check', copy);
    expect(checked).toMatchObject({ code: 2, out: [] });
    expect(checked.err[0]).toMatch(/^steps\.json: steps\.\d+\.handsOn: /);
    const used = await ask('use', copy, '--name', 'ours');
    expect(used.code).toBe(1);
    expect(used.err[0]).toContain('steps.json');
    expect((await ask('show')).out[0]).toBe('In use: the model as delivered.');
  });

  it('takes a sound change into use, says what differs, and goes back edition by edition', async () => {
    railMinutes(6);
    expect((await ask('diff', copy)).out).toEqual(['steps.json steps.meas-rails.handsOn: 4 -> 6']);
    expect((await ask('use', copy)).err[0]).toContain('--name');
    expect((await ask('use', copy, '--name', 'slow hands')).code).toBe(0);
    railMinutes(7);
    expect((await ask('use', copy, '--name', 'slower hands', '--by', 'nobody')).code).toBe(2);
    expect((await ask('use', copy, '--name', 'slower hands')).code).toBe(0);
    expect((await ask('show')).out).toEqual([
      'In use: slower hands, 1 changes to the model as delivered.',
      expect.stringContaining('faults'),
      'Before it: slow hands',
      'steps.json steps.meas-rails.handsOn: 4 -> 7',
    ]);
    expect((await ask('back')).out[0]).toContain('slow hands');
    expect((await ask('diff', copy)).out).toEqual(['steps.json steps.meas-rails.handsOn: 6 -> 7']);
    expect((await ask('back')).out[0]).toContain('as delivered');
    expect((await ask('back')).code).toBe(1);
  });

  it('says how far the shop’s own jobs moved the priors, takes them over and puts them back', async () => {
    const looked = await ask('learn');
    expect(looked.code).toBe(0);
    expect(looked.out[0]).toBe('1 closed jobs have a confirmed or cured fault.');
    expect(looked.out.join('\n')).toMatch(/stated \d+\.\d %, now \d+\.\d % .* of 0?\.?\d.* jobs: too few to say/);
    expect(looked.out.at(-1)).toContain('Nothing was taken over');
    expect((await ask('learn', '--take', 'reset')).code).toBe(1);
    expect((await ask('learn', '--take', 'yes')).out.at(-1)).toContain('Taken over');
    expect((await ask('learn', '--take', 'reset')).code).toBe(0);
  });

  it('refuses what it does not know', async () => {
    expect((await ask('paint')).code).toBe(2);
    expect((await ask('copy')).code).toBe(2);
    expect((await ask('check', join(folder, 'nowhere'))).err[0]).toContain('nowhere');
  });
});
