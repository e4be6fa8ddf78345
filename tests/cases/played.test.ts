import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import toCome from '../../assets/cases/steps-to-come.json' with { type: 'json' };
import aliases from '../../assets/fault-model/aliases.json' with { type: 'json' };
import { readCase } from '../../core/tracing/cases/form/readCase.ts';
import { judge } from '../../core/tracing/cases/judge/judge.ts';
import { tally } from '../../core/tracing/cases/judge/tally.ts';
import { play } from '../../core/tracing/cases/play/play.ts';
import { standardModel } from '../../core/tracing/live/model/standardModel.ts';

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
  { folder: 'open', right: 45, wrong: 1, none: 2, dangerous: 0, foolish: 2, minutes: 1.25 },
  { folder: 'ours', right: 56, wrong: 1, none: 11, dangerous: 4, foolish: 10, minutes: 1.8 },
] as const;

describe('bench cases, played to their ends', () => {
  it.each(STANDS)('$folder', { timeout: 240_000 }, ({ folder, right, wrong, none, dangerous, foolish, minutes }) => {
    const all = played(folder);
    expect(all.cases).toBeGreaterThanOrEqual(50);
    expect(all.ends.right).toBeGreaterThanOrEqual(right);
    expect(all.ends.wrong).toBeLessThanOrEqual(wrong);
    expect(all.ends.none).toBeLessThanOrEqual(none);
    expect(all.dangerous).toBeLessThanOrEqual(dangerous);
    expect(all.foolish).toBeLessThanOrEqual(foolish);
    expect(all.overAll).toBeLessThanOrEqual(minutes);
    expect(all.words.of - all.words.ok).toBeLessThanOrEqual(3);
  });

  it('knows every step that cases speak of by the same id as journals and shops’ models', () => {
    const is = Object.entries(toCome.steps).flatMap(([id, step]) => (step.is === null ? [] : [[id, step.is]]));
    expect(Object.fromEntries(is)).toEqual(aliases.is);
  });
});
