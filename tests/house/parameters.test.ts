import { describe, expect, it } from 'vitest';
import { tooManyParameters } from './parameters.ts';
import { filesBelow, HOUSE } from './source.ts';

describe('a function takes no more values in a row than anyone keeps apart', () => {
  it('holds in the whole house', () => {
    expect(HOUSE.flatMap((area) => filesBelow(area)).flatMap(tooManyParameters)).toEqual([]);
  });

  const six = 'a: A, b: A, c: A, d: A, e: A, f: A';
  it.each([
    `function lay(${six}): void {}`,
    `const lay = (${six}) => a;`,
    `class Plan { #lay(${six}): void {} }`,
    `type Lay = (${six}) => void;`,
  ])('finds %s', (text) => {
    expect(tooManyParameters({ path: 'core/job/a.ts', text })).toHaveLength(1);
  });

  it('lets five be, and one named value of six', () => {
    const text = 'function lay(a: A, b: A, c: A, d: A, e: A): void {}\nfunction put({ a, b, c, d, e, f }: A): void {}';
    expect(tooManyParameters({ path: 'core/job/a.ts', text })).toEqual([]);
  });
});
