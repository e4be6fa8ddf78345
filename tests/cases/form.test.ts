import { describe, expect, it } from 'vitest';
import { benchCaseFiles } from './benchCases.ts';
import { type BenchCase, zBenchCase } from './caseShape.ts';
import { isOutcome, isStep, isStepKind } from './modelIds.ts';
import { strayIds } from './strayIds.ts';

const files = benchCaseFiles();
const readable = files.flatMap(({ json }) => zBenchCase.safeParse(json).data ?? []);

/** What a technician would strike out on reading: points of a case that contradict each other. */
function contradictions(one: BenchCase): readonly string[] {
  const verdicts = [one.end.verdict].flat();
  const blames = verdicts.some((verdict) => verdict === 'confirmed' || verdict === 'named');
  const started = (one.before ?? []).some((entry) => entry.startsWith('watch-start:'));
  return [
    ...(blames && one.end.part === undefined ? ['a verdict that blames a part does not say which'] : []),
    ...(verdicts.includes('cured') && one.end.mend === undefined ? ['a cure does not say by what'] : []),
    ...verdicts
      .filter((verdict) => one.end.notSaid?.includes(verdict))
      .map((verdict) => `${verdict} is right and wrong`),
    ...(started && one.seen.length === 0 ? ['it was started, and nothing is said to have been seen'] : []),
    ...(started && !one.before?.includes(`watch-start:${one.firstStart}`) ? ['two first starts that differ'] : []),
  ];
}

describe('bench cases', () => {
  it('are there in two folders, the open ones and our own', () => {
    const inFolder = (folder: string) => files.filter(({ path }) => path.startsWith(`${folder}/`)).length;
    expect(inFolder('open')).toBe(53);
    expect(inFolder('ours')).toBeGreaterThanOrEqual(44);
  });

  it('have the form', () => {
    const broken = files.flatMap(({ path, json }) => {
      const { error } = zBenchCase.safeParse(json);
      return error ? error.issues.map((issue) => `${path} ${issue.path.join('.')}: ${issue.message}`) : [];
    });
    expect(broken).toEqual([]);
  });

  it('are called as their file is, each once', () => {
    expect(readable.map(({ id }) => id)).toEqual(files.map(({ name }) => name));
    expect(new Set(files.map(({ name }) => name)).size).toBe(files.length);
  });

  it('name only what the fault model or the steps to come know', () => {
    expect(readable.flatMap((one) => strayIds(one).map((stray) => `${one.id}: ${stray}`))).toEqual([]);
  });

  it('do not contradict themselves', () => {
    expect(readable.flatMap((one) => contradictions(one).map((said) => `${one.id}: ${said}`))).toEqual([]);
  });
});

describe('the reading of a bench case', () => {
  const [sound] = readable;
  const written = files[0]?.json;
  if (!sound || typeof written !== 'object') throw new Error('no bench case can be read');

  it('refuses a field that the form does not know, and one that is missing', () => {
    expect(zBenchCase.safeParse(written).success).toBe(true);
    expect(zBenchCase.safeParse({ ...written, minutes: 12 }).success).toBe(false);
    expect(zBenchCase.safeParse({ ...written, end: undefined }).success).toBe(false);
    expect(zBenchCase.safeParse({ ...written, machine: { cooler: 'wide' } }).success).toBe(false);
    expect(zBenchCase.safeParse({ ...written, firstThought: [{ after: [] }] }).success).toBe(false);
  });

  it.each<[string, Partial<BenchCase>]>([
    ['told.symptoms: hums', { told: { symptoms: ['hums'] } }],
    ['seen: np', { seen: ['np'] }],
    ['firstStart: watch-start:sings', { firstStart: 'sings' }],
    ['before: meas-coils:same', { before: ['meas-coils:same'] }],
    ['truth: gpu-tired', { truth: { faults: [{ new: 'a tired card', like: 'gpu-tired' }], comesAndGoes: false } }],
    ['answers: card-none:gone', { answers: { steps: { 'card-none': ['same', 'gone'] } } }],
    ['answers.mended: part:heart', { answers: { mended: [['cool-again', 'part:heart']], steps: {} } }],
    [
      'never.what: loaner-in:heart',
      { never: [{ what: ['start', 'loaner-in:heart'], until: 'ever', why: 'no such part' }] },
    ],
    [
      'never.until: look-outside',
      { never: [{ what: 'start', until: [['mended', 'look-outside']], why: 'no such step' }] },
    ],
    ['askedFirst.oneOf: sleep', { askedFirst: [{ after: [], oneOf: ['settled', 'sleep'] }] }],
    ['words.at: power', { words: [{ not: 'nothing-at-risk', at: 'power' }] }],
    ['end.part: soul', { end: { verdict: 'named', part: 'soul' } }],
    ['end.notSaid: cured:prayer', { end: { verdict: 'named', part: 'card', notSaid: ['cured:prayer'] } }],
    ['wall.dead: S99', { wall: { dead: ['S99'] } }],
    ['agreed: everything', { agreed: ['everything'] }],
  ])('finds %s', (stray, changed) => {
    expect(strayIds({ ...sound, ...changed })).toContain(stray);
  });

  it('knows an outcome by its older id, and a step to come by the outcomes the cases give it', () => {
    expect(isOutcome('watch-start', 'np')).toBe(true);
    expect(isOutcome('watch-start', 'no-post')).toBe(true);
    expect(isOutcome('look-inside', 'np')).toBe(false);
    expect(isOutcome('cell-measure', 'flat')).toBe(true);
    expect(isStep('fan-finger')).toBe(true);
    expect(isStepKind('own-part-on-rig:card')).toBe(true);
    expect(isStepKind('start:card')).toBe(false);
  });
});
