import { describe, expect, it } from 'vitest';
import { LARGEST, parseProblem } from './parseProblem.ts';

type Loose = Record<string, unknown>;
type File = { faults: Loose[]; assembly: Loose[]; steps: Loose[] } & Loose;

const good = (): File => ({
  faults: [
    { id: 'supply', weight: 3 },
    { id: 'memory', weight: 1 },
  ],
  assembly: [
    { id: 'panel', opening: 2, closing: 2, within: null },
    { id: 'cooler', opening: 6, closing: 8, within: 'panel' },
  ],
  steps: [
    {
      id: 'swap supply',
      minutes: 10,
      waiting: 4,
      open: ['cooler'],
      outcomes: ['works', 'same'],
      cures: ['works'],
      chance: { supply: [0.9, 0.1], '*': [0, 1] },
      harm: { memory: 5 },
      finish: { works: 12 },
    },
    {
      id: 'look',
      minutes: 1,
      closed: ['panel'],
      outcomes: ['lit', 'dark'],
      chance: { supply: [0, 1], memory: [1, 0] },
    },
  ],
  waitingWeight: 0.25,
  handOver: 60,
});

/** What comes of the good file after one change. */
function after(change: (file: File) => void): { refused: string; field: string } | 'read' {
  const file = good();
  change(file);
  const parsed = parseProblem(JSON.stringify(file), 'case.json');
  if (parsed.ok) return 'read';
  expect(parsed.refusal.file).toBe('case.json');
  return { refused: parsed.refusal.refused, field: parsed.refusal.field };
}

function weigh(file: File, weight: number): void {
  for (const fault of file.faults) fault.weight = weight;
}

const step = (file: File, at = 0): Loose => file.steps[at] as Loose;

describe('a tracing problem from a file', () => {
  it('is read with weights normalised, waiting weighed, and what open and closed imply', () => {
    const parsed = parseProblem(JSON.stringify(good()), 'case.json');
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.refusal));
    const { problem } = parsed;
    expect([...problem.prior]).toEqual([0.75, 0.25]);
    expect(problem.steps[0]).toMatchObject({ minutes: 11, opens: [0, 1], closes: [], cures: [true, false] });
    expect(problem.steps[1]).toMatchObject({ minutes: 1, opens: [], closes: [0, 1], cures: [false, false] });
    expect([...(problem.steps[0]?.ending ?? [])]).toEqual([0.9 * 12, 0]);
    expect([...(problem.steps[0]?.harm ?? [])]).toEqual([0, 5]);
  });

  it('may leave out assembly, waiting, open, closed, cures, harm and finish', () => {
    const bare = {
      faults: [{ id: 'f', weight: 1 }],
      steps: [{ id: 's', minutes: 1, outcomes: ['same'], chance: { '*': [1] } }],
      waitingWeight: 0,
      handOver: 0,
    };
    expect(parseProblem(JSON.stringify(bare), 'bare.json').ok).toBe(true);
  });

  it('may hold no steps at all', () => {
    expect(after((file) => Object.assign(file, { steps: [] }))).toBe('read');
  });

  it('takes a row that misses 1 by no more than 1e-9', () => {
    expect(after((file) => Object.assign(step(file), { chance: { '*': [0.3333333333, 0.6666666666] } }))).toBe('read');
    expect(after((file) => Object.assign(step(file), { chance: { '*': [0.333333, 0.666666] } }))).toEqual({
      refused: 'row-sum',
      field: 'steps[0].chance.*',
    });
  });
});

describe('a bad file is named with its field', () => {
  it.each<[string, string, (file: File) => void]>([
    ['missing', 'faults', (file) => Reflect.deleteProperty(file, 'faults')],
    ['no-faults', 'faults', (file) => Object.assign(file, { faults: [] })],
    ['all-weights-zero', 'faults', (file) => weigh(file, 0)],
    ['negative', 'faults[1].weight', (file) => Object.assign(file.faults[1] as Loose, { weight: -1 })],
    ['not-a-number', 'faults[0].weight', (file) => Object.assign(file.faults[0] as Loose, { weight: '3' })],
    ['missing', 'faults[0].weight', (file) => Reflect.deleteProperty(file.faults[0] as Loose, 'weight')],
    ['doubled-id', 'faults[1].id', (file) => Object.assign(file.faults[1] as Loose, { id: 'supply' })],
    ['not-an-id', 'faults[0].id', (file) => Object.assign(file.faults[0] as Loose, { id: '' })],
    ['not-an-id', 'faults[0].id', (file) => Object.assign(file.faults[0] as Loose, { id: '*' })],
    ['not-an-object', 'faults[0]', (file) => Object.assign(file, { faults: [7] })],
    ['missing', 'waitingWeight', (file) => Reflect.deleteProperty(file, 'waitingWeight')],
    ['negative', 'waitingWeight', (file) => Object.assign(file, { waitingWeight: -0.1 })],
    ['missing', 'handOver', (file) => Reflect.deleteProperty(file, 'handOver')],
    ['not-a-number', 'handOver', (file) => Object.assign(file, { handOver: null })],
    ['missing', 'steps', (file) => Reflect.deleteProperty(file, 'steps')],
    ['doubled-id', 'steps[1].id', (file) => Object.assign(step(file, 1), { id: 'swap supply' })],
    ['missing', 'steps[0].minutes', (file) => Reflect.deleteProperty(step(file), 'minutes')],
    ['negative', 'steps[0].minutes', (file) => Object.assign(step(file), { minutes: -3 })],
    ['negative', 'steps[0].waiting', (file) => Object.assign(step(file), { waiting: -3 })],
    ['not-a-number', 'steps[0].waiting', (file) => Object.assign(step(file), { waiting: null })],
    ['unknown-id', 'steps[0].open[0]', (file) => Object.assign(step(file), { open: ['lid'] })],
    ['unknown-id', 'steps[0].closed[0]', (file) => Object.assign(step(file), { closed: ['lid'] })],
    ['open-and-closed', 'steps[0].closed', (file) => Object.assign(step(file), { closed: ['cooler'] })],
    ['open-and-closed', 'steps[0].closed', (file) => Object.assign(step(file), { closed: ['panel'] })],
    ['missing', 'steps[0].outcomes', (file) => Reflect.deleteProperty(step(file), 'outcomes')],
    ['doubled-id', 'steps[0].outcomes[1]', (file) => Object.assign(step(file), { outcomes: ['works', 'works'] })],
    ['cure-not-an-outcome', 'steps[0].cures[0]', (file) => Object.assign(step(file), { cures: ['better'] })],
    ['missing', 'steps[0].chance', (file) => Reflect.deleteProperty(step(file), 'chance')],
    ['row-missing', 'steps[0].chance.memory', (file) => Object.assign(step(file), { chance: { supply: [1, 0] } })],
    [
      'row-length',
      'steps[0].chance.supply',
      (file) => Object.assign(step(file), { chance: { supply: [1], '*': [0, 1] } }),
    ],
    [
      'row-sum',
      'steps[0].chance.supply',
      (file) => Object.assign(step(file), { chance: { supply: [1, 0.1], '*': [0, 1] } }),
    ],
    ['negative', 'steps[0].chance.*[0]', (file) => Object.assign(step(file), { chance: { '*': [-0.5, 1.5] } })],
    [
      'unknown-id',
      'steps[0].chance.fan',
      (file) => Object.assign(step(file), { chance: { fan: [1, 0], '*': [0, 1] } }),
    ],
    ['unknown-id', 'steps[0].harm.fan', (file) => Object.assign(step(file), { harm: { fan: 3 } })],
    ['negative', 'steps[0].harm.memory', (file) => Object.assign(step(file), { harm: { memory: -3 } })],
    ['unknown-id', 'steps[0].finish.gone', (file) => Object.assign(step(file), { finish: { gone: 3 } })],
    ['not-a-number', 'steps[0].finish.works', (file) => Object.assign(step(file), { finish: { works: 'soon' } })],
    ['doubled-id', 'assembly[1].id', (file) => Object.assign(file.assembly[1] as Loose, { id: 'panel' })],
    ['negative', 'assembly[1].opening', (file) => Object.assign(file.assembly[1] as Loose, { opening: -2 })],
    ['missing', 'assembly[0].closing', (file) => Reflect.deleteProperty(file.assembly[0] as Loose, 'closing')],
    ['unknown-id', 'assembly[1].within', (file) => Object.assign(file.assembly[1] as Loose, { within: 'lid' })],
    ['within-cycle', 'assembly[0].within', (file) => Object.assign(file.assembly[0] as Loose, { within: 'cooler' })],
    ['within-cycle', 'assembly[0].within', (file) => Object.assign(file.assembly[0] as Loose, { within: 'panel' })],
    ['not-a-list', 'assembly', (file) => Object.assign(file, { assembly: {} })],
  ])('%s at %s', (refused, field, change) => {
    expect(after(change)).toEqual({ refused, field });
  });

  it('says where JSON ends being JSON, and that a list is no problem', () => {
    const broken = parseProblem('{ "faults": [', 'broken.json');
    expect(broken).toMatchObject({ ok: false, refusal: { refused: 'not-json', file: 'broken.json', field: '(file)' } });
    expect(parseProblem('[]', 'list.json')).toMatchObject({
      ok: false,
      refusal: { refused: 'not-an-object', field: '(file)' },
    });
  });

  it('sees a number too large to be one', () => {
    const huge = JSON.stringify(good()).replace('"handOver":60', '"handOver":1e999');
    expect(parseProblem(huge, 'huge.json')).toMatchObject({
      ok: false,
      refusal: { refused: 'not-a-number', field: 'handOver' },
    });
  });

  it('sees a fault listed twice in one step, of which JSON keeps only the last', () => {
    const twice = JSON.stringify(good()).replace('"supply":[0.9,0.1]', '"supply":[0.9,0.1],"supply":[0.2,0.8]');
    expect(parseProblem(twice, 'twice.json')).toMatchObject({
      ok: false,
      refusal: { refused: 'doubled-id', field: 'steps[0].chance.supply', id: 'supply' },
    });
  });

  it('is not fooled by names that every object inherits', () => {
    expect(after((file) => Object.assign(step(file), { chance: { constructor: [1, 0], '*': [0, 1] } }))).toEqual({
      refused: 'unknown-id',
      field: 'steps[0].chance.constructor',
    });
    expect(after((file) => Object.assign(file.faults[0] as Loose, { id: 'constructor' }))).toEqual({
      refused: 'unknown-id',
      field: 'steps[0].chance.supply',
    });
  });

  it('reads no more than it can plan', () => {
    const many = Array.from({ length: LARGEST.steps + 1 }, (_, at) => ({
      id: `s${at}`,
      minutes: 1,
      outcomes: ['same'],
      chance: { '*': [1] },
    }));
    expect(after((file) => Object.assign(file, { steps: many }))).toEqual({ refused: 'too-many', field: 'steps' });
    expect(after((file) => Object.assign(file, { steps: many.slice(1) }))).toBe('read');
  });

  it('takes weights too large to add up', () => {
    expect(after((file) => weigh(file, 1e308))).toBe('read');
  });
});
