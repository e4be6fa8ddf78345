import { describe, expect, it } from 'vitest';
import { leftovers } from './leftovers.ts';
import { filesBelow } from './source.ts';

const line = (text: string) => leftovers({ path: 'core/job/a.ts', text });
const later = ['TO', 'DO'].join('');

describe('no leftovers of the making', () => {
  it('holds in the whole project', () => {
    expect(filesBelow().flatMap(leftovers)).toEqual([]);
  });

  it('asks a note for later for its reason', () => {
    expect(line(`// ${later}`)).toHaveLength(1);
    expect(line(`// ${later}: tidy up`)).toHaveLength(1);
    expect(line(`// ${later}: cent rounding waits for the tax table`)).toEqual([]);
  });

  it.each([
    ['de', 'sign/4, rule 3'],
    ['see ../sh', 'ared/sources'],
    ['as sta', 'ck.md says'],
    ['as the gui', 'de says'],
    ['for issu', 'e 3'],
    ['FIX', 'ME'],
  ])('finds a pointer nobody else can follow (%s%s)', (head, tail) => {
    expect(line(`// ${head}${tail}`)).toHaveLength(1);
  });

  it.each(['// its design / layout', '// a shared folder', '// the issued paper', '// the date of issue'])(
    'lets %s be',
    (text) => {
      expect(line(text)).toEqual([]);
    },
  );
});
