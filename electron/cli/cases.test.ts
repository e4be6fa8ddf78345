import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { A_DEAD_SUPPLY } from '../../tests/builders/benchCase.ts';
import { cases } from './cases.ts';
import type { CliCommand } from './command.ts';
import { next } from './next.ts';

const folder = mkdtempSync(join(tmpdir(), 'knowngood-cases-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function ask(command: CliCommand, args: readonly string[], lines: readonly string[] = []) {
  const out: string[] = [];
  const err: string[] = [];
  const code = await command.run(args, {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async (path) => new Uint8Array(await readFile(path)),
    lines: async function* () {
      // The answer to each line is there before the next is given.
      for (const [at, line] of lines.entries()) {
        expect(out).toHaveLength(at);
        yield line;
      }
    },
  });
  return { code, out, err };
}

function write(name: string, given: object): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify({ ...A_DEAD_SUPPLY, ...given }, null, 2));
  return path;
}

describe('knowngood next', () => {
  it('says the next step of a case in words, and as one line of JSON', async () => {
    const path = write('dead-supply.json', {});
    const { code, out } = await ask(next, [path]);
    expect(code).toBe(0);
    expect(out[1]).toMatch(/^(Most likely|Nothing stands out yet; first) the .+, \d+ in 10\./);
    expect(out.find((line) => line.startsWith('Plan: '))).toMatch(/about \d+ min in all, \d+\.$/);
    expect(out.find((line) => line.startsWith('Next: '))).toMatch(/^Next: .+ \(\d+ min, \d+ min waiting\)/);
    const json = await ask(next, [path, '--json']);
    const answer = JSON.parse(json.out[0] ?? '');
    expect(answer).toMatchObject({ case: 'dead-supply', protocol: 1, verdict: null });
    expect(answer.outcomes.filter((one: { normal: boolean }) => one.normal)).toHaveLength(1);
    expect(answer.steps.map((one: { id: string }) => one.id)).toContain(answer.step);
  });

  it('answers the same whether it is shown what is really wrong or not', async () => {
    const {
      truth: _t,
      answers: _a,
      end: _e,
      master: _m,
      title: _i,
      about: _b,
      firstStart: _f,
      ...bare
    } = A_DEAD_SUPPLY;
    const lines = [JSON.stringify(A_DEAD_SUPPLY), JSON.stringify(bare)];
    const { out } = await ask(next, ['--json', '-'], lines);
    expect(out[0]).toBe(out[1]);
  });

  it('gives a bad line its error and answers the next', async () => {
    const line = (given: object) => JSON.stringify({ id: 'x', told: { symptoms: ['dark-runs'] }, ...given });
    const lines = [
      '{"id": ',
      line({ told: {} }),
      line({ before: ['card-lone:same'] }),
      line({ before: ['card-loan:sam'] }),
      line({ machine: { kind: 'tower', wheels: 4 }, humour: 'good' }),
    ];
    const { code, out } = await ask(next, ['--json', '-'], lines);
    expect(code).toBe(0);
    expect(out.map((one) => JSON.parse(one))).toMatchObject([
      { case: null, error: { is: 'not-a-case' } },
      { case: 'x', error: { is: 'not-a-case', at: 'told.symptoms' } },
      { case: 'x', error: { is: 'unknown-id', at: 'card-lone:same' } },
      { case: 'x', error: { is: 'unknown-outcome', at: 'card-loan:sam' } },
      { case: 'x', ignored: ['humour', 'machine.kind', 'machine.wheels'] },
    ]);
  });

  it('names field and line of a bad file, and what is near an unknown step', async () => {
    const bad = await ask(next, [write('bad.json', { told: { symptoms: [] } })]);
    expect(bad).toMatchObject({ code: 2, out: [] });
    expect(bad.err[0]).toMatch(/bad\.json: told\.symptoms, line 6: /);
    const strange = await ask(next, [write('strange.json', { before: ['look-insid:clean'] })]);
    expect(strange.err[0]).toContain('nothing is called look-insid:clean. Near it: look-inside');
    expect((await ask(next, [join(folder, 'gone.json')])).code).toBe(2);
    expect((await ask(next, [])).code).toBe(2);
  });

  it('takes a model of the shop’s own, and names what in it does not hold together', async () => {
    const own = join(folder, 'own');
    cpSync('assets/fault-model', own, { recursive: true });
    const path = write('own.json', { before: ['look-inside:clean'] });
    const change = (how: (file: { steps: { id: string; handsOn: number }[] }) => void) => {
      const file = JSON.parse(readFileSync(join(own, 'steps.json'), 'utf8'));
      how(file);
      writeFileSync(join(own, 'steps.json'), JSON.stringify(file, null, 1));
    };
    change(({ steps }) => {
      for (const step of steps) step.handsOn = 7;
    });
    const { out } = await ask(next, [path, '--json', '--model', own]);
    expect(JSON.parse(out[0] ?? '').minutes).toBeGreaterThanOrEqual(7);
    change(({ steps }) => {
      for (const step of steps) step.handsOn = -1;
    });
    const refused = await ask(next, [path, '--model', own]);
    expect(refused.code).toBe(2);
    expect(refused.err[0]).toMatch(/^steps\.json: steps\.0\.handsOn, line \d+: /);
  });
});

describe('knowngood cases', () => {
  it('plays every case of a folder and says what it comes to', async () => {
    const played = mkdtempSync(join(folder, 'played-'));
    writeFileSync(join(played, 'dead-supply.json'), JSON.stringify(A_DEAD_SUPPLY));
    const { code, out } = await ask(cases, [played]);
    expect(code).toBe(0);
    expect(out[0]).toMatch(/^right +dead-supply: \d+ min, master 16, knowing \d+; confirmed supply/);
    expect(out.at(-1)).toMatch(
      /^1 cases: 1 right, 0 wrong, 0 dangerous \(never breached\), minutes engine\/master \d\.\d\d over those ended rightly, \d\.\d\d over all$/,
    );
    const json = await ask(cases, [played, '--json']);
    expect(JSON.parse(json.out[0] ?? '')).toMatchObject({ case: 'dead-supply', end: 'right', master: 16 });
    expect(json.out.at(-1)).toBe(out.at(-1));
  });

  it('plays none while one does not hold together', async () => {
    const broken = mkdtempSync(join(folder, 'broken-'));
    writeFileSync(join(broken, 'dead-supply.json'), JSON.stringify(A_DEAD_SUPPLY));
    writeFileSync(join(broken, 'misnamed.json'), JSON.stringify(A_DEAD_SUPPLY, null, 1));
    writeFileSync(
      join(broken, 'typo.json'),
      JSON.stringify({ ...A_DEAD_SUPPLY, id: 'typo', end: { verdict: 'confirmd' } }, null, 1),
    );
    const { code, out, err } = await ask(cases, [broken]);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err[0]).toMatch(/^misnamed\.json: id, line 2: /);
    expect(err[1]).toMatch(/^typo\.json: end\.verdict, line \d+: /);
  });

  it('says which folder is missing or empty', async () => {
    expect((await ask(cases, [join(folder, 'nowhere')])).code).toBe(2);
    expect((await ask(cases, [mkdtempSync(join(folder, 'empty-'))])).code).toBe(2);
  });
});
