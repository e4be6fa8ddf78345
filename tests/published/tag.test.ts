import { describe, expect, it } from 'vitest';
import { checkCharacter, parseTag } from '../../core/custody/tag.ts';

/** Published strings with their ISO/IEC 7064 MOD 37,36 check character, each with where it stands. */
const PUBLISHED: readonly (readonly [body: string, check: string, source: string])[] = [
  ['A12425GABC1234002', 'M', 'IFPI GRid Standard 2.1: A1-2425G-ABC1234002-M'],
  ['00000000D07A0090', 'Q', 'ISAN (ISO 15706) 0000-0000-D07A-0090-Q, in the documentation of python-stdnum'],
  ['00000000D07A009000000000', 'X', 'ISAN 0000-0000-D07A-0090-Q-0000-0000-X, in the documentation of python-stdnum'],
  ['188166C734206541', 'Y', 'ISAN 1881-66C7-3420-6541-Y-9F3A-0245-O, in the documentation of python-stdnum'],
  ['188166C7342065419F3A0245', 'O', 'ISAN 1881-66C7-3420-6541-Y-9F3A-0245-O, in the documentation of python-stdnum'],
  [
    '00000000C36D002B',
    'K',
    'ISAN 0000-0000-C36D-002B-K-0000-0000-E (ISO 15706), in the tests of a public .NET library',
  ],
  [
    '00000000C36D002B00000000',
    'E',
    'ISAN 0000-0000-C36D-002B-K-0000-0000-E (ISO 15706), in the tests of a public .NET library',
  ],
  ['RABD', 'A', 'test values of a public Go library of ISO/IEC 7064:2003'],
  ['X0H', 'X', 'test values of a public Go library of ISO/IEC 7064:2003'],
  ['B7Q3SFTUSH2QN7BIXBPMNZAM', 'I', 'test values of a public Go library of ISO/IEC 7064:2003'],
  ['UFSYYJO9FCID766EJYAEINTG43UZDD84MT6ZUDH08OM4N1K', 'N', 'test values of a public Go library of ISO/IEC 7064:2003'],
];

/** Every tag on the demo shop's wall, its papers and its machines. Invented; they must check out all the same. */
const DEMO =
  'E6H W34 5|5AW WR3 K|RRH 3A3 R|5RD PX7 X|5PY 4R3 K|M5P 3A9 6|5MW H39 J|P5F T24 M|9TH 6WC 7|FTF M55 2|E9M TT2 T|' +
  '5HY 9M7 M|6RK W6T D|F6C 6KA 5|M39 D6A D|T45 NJ7 M|E6M J3X 4|HHM 47K A|CD2 6JP F|XA2 MR7 A|A7Y A4R 7|M2W 6XD A|K7R 4TM X';

describe('ISO/IEC 7064 MOD 37,36', () => {
  it.each(PUBLISHED)('gives %s the check character %s (%s)', (body, check) => {
    expect(checkCharacter(body)).toBe(check);
  });
  it.each(DEMO.split('|'))('accepts the demo tag %s', (tag) => {
    expect(parseTag(tag)).toBe(tag.replaceAll(' ', ''));
  });
  // What the standard claims for its systems: every single substitution, "all or nearly all" transpositions
  // (as quoted at wiki.freepascal.org/ISO_7064). Counted here over all states.
  it('finds every single substitution, from every state the sum can be in', () => {
    const values = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
    for (const before of values)
      for (const right of values) {
        const check = checkCharacter(before + right);
        for (const wrong of values) if (wrong !== right) expect(checkCharacter(before + wrong)).not.toBe(check);
      }
  });
  it('misses no more than 2 in 1,000 swaps of neighbours, and only of characters next to each other in the alphabet', () => {
    const values = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
    let missed = 0;
    let swaps = 0;
    for (const before of values)
      for (let a = 0; a < 36; a += 1)
        for (let b = 0; b < 36; b += 1) {
          if (a === b) continue;
          swaps += 1;
          const [x, y] = [values.charAt(a), values.charAt(b)];
          if (checkCharacter(before + x + y) !== checkCharacter(before + y + x)) continue;
          missed += 1;
          expect([1, 35]).toContain(Math.abs(a - b));
        }
    expect(missed / swaps).toBeLessThan(0.002);
    expect(missed).toBeGreaterThan(0);
  });
});
