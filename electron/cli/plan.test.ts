import { readdir, readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { plan } from './plan.ts';

const good = {
  faults: [
    { id: 'supply', weight: 2 },
    { id: 'module', weight: 1 },
  ],
  steps: [
    {
      id: 'swap module',
      minutes: 5,
      outcomes: ['works', 'same'],
      cures: ['works'],
      chance: { module: [1, 0], '*': [0, 1] },
    },
    {
      id: 'swap supply',
      minutes: 8,
      outcomes: ['works', 'same'],
      cures: ['works'],
      chance: { supply: [1, 0], '*': [0, 1] },
    },
  ],
  waitingWeight: 0.25,
  handOver: 60,
};
const steps = Array.from({ length: 24 }, (_, at) => ({
  ...good.steps[at % 2],
  id: `s${at}`,
  chance: { '*': [0.5, 0.5] },
}));

const files: Record<string, string> = {
  'a.json': JSON.stringify(good),
  'bad.json': JSON.stringify({ ...good, handOver: -1 }),
  'many.json': JSON.stringify({ ...good, steps }),
  'log.json': '[{"step":"swap supply","outcome":"same"}]',
  'packed.json': '\u001b[31m\u0000\npacked',
  'wrong-log.json': '[{"step":"swap fan","outcome":"same"}]',
};

async function ask(...args: string[]): Promise<{ code: number; out: string[]; err: string[] }> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await plan.run(args, {
    out: (line) => void out.push(line),
    err: (line) => void err.push(line),
    readFile: async (path) => {
      const text = files[path];
      if (text === undefined) throw new Error('no such file');
      return new TextEncoder().encode(text);
    },
  });
  return { code, out, err };
}

describe('knowngood plan', () => {
  it('says of a packed file in one plain line that it is no JSON, and answers the next', async () => {
    const { code, out, err } = await ask('packed.json', 'a.json', '--json');
    expect(code).toBe(2);
    expect(err).toHaveLength(1);
    expect(err[0]).toMatch(/^packed\.json: \(file\): This is no JSON \(\P{Cc}+\)\.$/u);
    expect(out).toHaveLength(2);
  });

  it('answers each file with a line of JSON in the order given', async () => {
    const { code, out, err } = await ask('a.json', 'a.json', '--json', '--method', 'exact');
    expect({ code, err, lines: out.length }).toEqual({ code: 0, err: [], lines: 2 });
    // 8 minutes always, 5 more for the third that has the module: 8 + 5/3.
    const answer = JSON.parse(out[0] ?? '');
    expect(Object.keys(answer)).toEqual(['method', 'expectedMinutes', 'first', 'cutMass', 'policy']);
    expect(answer.expectedMinutes).toBeCloseTo(8 + 5 / 3, 12);
    expect(JSON.stringify(answer.policy)).toBe(
      '{"step":"swap supply","then":{"works":"done","same":{"step":"swap module","then":{"works":"done"}}}}',
    );
    expect(answer).toMatchObject({ method: 'exact', first: 'swap supply', cutMass: 0 });
  });

  it('names file and field of a bad one, answers the others, and ends with 2', async () => {
    const { code, out, err } = await ask('bad.json', 'a.json', 'gone.json', '--json');
    expect(code).toBe(2);
    expect(err).toEqual([
      'bad.json: handOver: -1 is negative; 0 or more is needed.',
      'gone.json: (file): The file cannot be read (no such file).',
    ]);
    expect(out.map((line) => JSON.parse(line))).toMatchObject([
      { refused: 'negative', file: 'bad.json', field: 'handOver' },
      { method: 'rollout', first: 'swap supply' },
      { refused: 'cannot-read', file: 'gone.json' },
    ]);
  });

  it('tells people the plan in lines', async () => {
    const { out } = await ask('a.json');
    expect(out).toEqual([
      'a.json: 9.67 expected minutes by rollout',
      '  swap supply (works: done)',
      '  swap module (works: done)',
    ]);
  });

  it('prints only the next step with --next', async () => {
    expect(await ask('a.json', '--next', 'log.json')).toEqual({ code: 0, out: ['a.json: next, swap module'], err: [] });
    const json = await ask('a.json', '--next', 'log.json', '--json', '--method=ratio');
    expect(json.out).toEqual(['{"method":"ratio","next":"swap module"}']);
    const wrong = await ask('a.json', '--next', 'wrong-log.json');
    expect(wrong.code).toBe(2);
    expect(wrong.err).toEqual(['a.json: --next [0]: The log names the step "swap fan", which is not in this file.']);
  });

  it('says the limit and what to ask instead', async () => {
    const { code, err } = await ask('many.json', '--method', 'exact');
    expect(code).toBe(1);
    expect(err[0]).toContain('16777216');
    expect(err[0]).toContain('--method rollout');
  });

  it.each([
    [['a.json', '--method', 'magic'], 'There is no method "magic"'],
    [['a.json', '--cut', '1'], '"1" is no cut'],
    [['a.json', '--cut'], '--cut needs a value'],
    [['a.json', '--fast'], 'There is no option --fast'],
    [['--json'], 'Name at least one file'],
  ])('refuses %j', async (args, says) => {
    const { code, err } = await ask(...args);
    expect(code).toBe(2);
    expect(err[0]).toContain(says);
  });

  it('has words for every refusal its parts can give', async () => {
    const folder = new URL('../../core/tracing/plan/', import.meta.url);
    const sources = (await readdir(folder, { recursive: true })).filter((name) => /(?<!\.test)\.ts$/.test(name));
    const texts = await Promise.all(sources.map((name) => readFile(new URL(name, folder), 'utf8')));
    const words = JSON.parse(await readFile(new URL('../../assets/words/en/plan.json', import.meta.url), 'utf8'));
    const names = texts.flatMap((text) =>
      [...text.matchAll(/(?:BadField|Halt|wrong)\(\s*'([a-z-]+)'/g)].map((match) => match[1]),
    );
    expect(new Set(names).size).toBeGreaterThan(20);
    for (const name of names) expect(words.says, name).toHaveProperty([name ?? '']);
  });
});
