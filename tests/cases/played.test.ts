import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import toCome from '../../assets/cases/steps-to-come.json' with { type: 'json' };
import aliases from '../../assets/fault-model/aliases.json' with { type: 'json' };
import { readCase } from '../../core/tracing/cases/form/readCase.ts';
import { judge } from '../../core/tracing/cases/judge/judge.ts';
import { tally } from '../../core/tracing/cases/judge/tally.ts';
import { play } from '../../core/tracing/cases/play/play.ts';
import { standardModel } from '../../core/tracing/live/loading/standardModel.ts';

const model = standardModel();
const ENDING = '.json';

/** Every case of a folder beside this file, played to its end by the screen's own method, and judged. */
function played(folder: string) {
  const place = new URL(`./${folder}/`, import.meta.url);
  const judged = readdirSync(place).map((file) => {
    const read = readCase(readFileSync(new URL(file, place), 'utf8'), file.slice(0, -ENDING.length), model);
    if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.refusal)}`);
    return judge(model, play(model, read.case));
  });
  return tally(judged);
}

/**
 * Where the engine stands, to be tightened as it gets better and never loosened. What is wanted: nothing wrong, dangerous or
 * foolish, 9 in 10 right, no more than 1.15 times a master's minutes.
 */
const STANDS = [
  {
    folder: 'open',
    right: 51,
    wrong: 0,
    none: 0,
    dangerous: 0,
    foolish: 0,
    minutes: 1.03,
    knowing: 1.52,
    tooLong: 0,
    first: 52,
  },
  {
    folder: 'ours',
    right: 70,
    wrong: 0,
    none: 0,
    dangerous: 0,
    foolish: 0,
    minutes: 1.09,
    knowing: 1.53,
    tooLong: 0,
    first: 73,
  },
] as const;

describe('bench cases, played to their ends', () => {
  it.each(STANDS)('$folder', { timeout: 240_000 }, ({ folder, ...stands }) => {
    const all = played(folder);
    expect(all.cases).toBeGreaterThanOrEqual(50);
    expect(all.ends.right).toBeGreaterThanOrEqual(stands.right);
    expect(all.ends.wrong).toBeLessThanOrEqual(stands.wrong);
    expect(all.ends.none).toBeLessThanOrEqual(stands.none);
    expect(all.dangerous).toBeLessThanOrEqual(stands.dangerous);
    expect(all.foolish).toBeLessThanOrEqual(stands.foolish);
    expect(all.overAll).toBeLessThanOrEqual(stands.minutes);
    expect(all.overKnowing).toBeLessThanOrEqual(stands.knowing);
    expect(all.tooLong).toBeLessThanOrEqual(stands.tooLong);
    expect(all.firstSteps.ok).toBeGreaterThanOrEqual(stands.first);
    expect(all.words.of - all.words.ok).toBeLessThanOrEqual(3);
  });

  it('knows every step that cases speak of by the same id as journals and shops’ models', () => {
    const is = Object.entries(toCome.steps).flatMap(([id, step]) => (step.is === null ? [] : [[id, step.is]]));
    expect(Object.fromEntries(is)).toEqual(aliases.is);
  });
});
