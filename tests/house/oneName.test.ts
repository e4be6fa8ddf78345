import { describe, expect, it } from 'vitest';
import { namesWithoutReason } from './oneName.ts';
import { filesBelow, HOUSE } from './source.ts';

const file = (path: string, text: string) => ({ path, text });

describe('an exported name stands for one thing', () => {
  it('holds in the whole house, or says why not', () => {
    expect(namesWithoutReason(HOUSE.flatMap((area) => filesBelow(area)))).toEqual([]);
  });

  it('finds a name that stands for two things', () => {
    const twice = [file('core/a.ts', 'export type Verdict = 1;'), file('db/b.ts', 'export const Verdict = 2;')];
    expect(namesWithoutReason(twice, {})).toEqual(['Verdict stands in core/a.ts and db/b.ts: one name, one thing']);
    expect(namesWithoutReason(twice, { Verdict: 'one a layer' })).toEqual([]);
  });

  it('finds a third thing under a name that has a reason for two', () => {
    const thrice = ['core/a.ts', 'db/b.ts', 'renderer/c.ts'].map((path) => file(path, 'export type Verdict = 1;'));
    expect(namesWithoutReason(thrice, { Verdict: 'one a layer' })).toEqual([
      'Verdict stands in core/a.ts and db/b.ts and renderer/c.ts: one name, one thing',
    ]);
  });

  it('lets a folder give one name in each of its files, and nobody else', () => {
    const steps = ['db/up/1.ts', 'db/up/2.ts', 'db/up/3.ts'].map((path) => file(path, 'export const up = 1;'));
    expect(namesWithoutReason(steps, {}, { up: 'db/up/' })).toEqual([]);
    expect(
      namesWithoutReason([...steps, file('core/a.ts', 'export const up = 1;')], {}, { up: 'db/up/' }),
    ).toHaveLength(1);
  });

  it('finds a reason that nothing needs any more', () => {
    const once = [file('core/a.ts', 'export type Verdict = 1;')];
    expect(namesWithoutReason(once, { Verdict: 'one a layer' })).toEqual([
      'Verdict stands once: its reason is left over',
    ]);
  });
});
