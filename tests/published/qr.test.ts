import bwip from 'bwip-js/node';
import { describe, expect, it } from 'vitest';
import { issueTag } from '../../core/custody/tag.ts';
import { seededChance } from '../../electron/cli/demo/seededChance.ts';

type Level = 'L' | 'M' | 'Q' | 'H';
type Row = readonly [numeric: number, alphanumeric: number, byte: number];

/**
 * How many characters a QR code (ISO/IEC 18004, model 2) holds, versions 1 to 5: table 15.4.2 of a laser marker's
 * manual (easymanua.ls/panasonic/lp-rv-series, page 162), which gives the standard's figures.
 */
const HOLDS: readonly Readonly<Record<Level, Row>>[] = [
  { L: [41, 25, 17], M: [34, 20, 14], Q: [27, 16, 11], H: [17, 10, 7] },
  { L: [77, 47, 32], M: [63, 38, 26], Q: [48, 29, 20], H: [34, 20, 14] },
  { L: [127, 77, 53], M: [101, 61, 42], Q: [77, 47, 32], H: [58, 35, 24] },
  { L: [187, 114, 78], M: [149, 90, 62], Q: [111, 67, 46], H: [82, 50, 34] },
  { L: [255, 154, 106], M: [202, 122, 84], Q: [144, 87, 60], H: [106, 64, 44] },
];
const SIGNS = ['7', 'K', 'k'] as const;

/** Side of the code in modules, as the library that prints our tags makes it. */
function modules(text: string, level: Level): number {
  const raw = (bwip as unknown as { raw: (options: object) => readonly { readonly pixx: number }[] }).raw;
  return raw({ bcid: 'qrcode', text, eclevel: level })[0]?.pixx ?? 0;
}

const CASES = HOLDS.flatMap((levels, index) =>
  (Object.entries(levels) as [Level, Row][]).flatMap(([level, row]) =>
    row.map((holds, mode) => [index + 1, level, ['digits', 'capitals', 'bytes'][mode] ?? '', holds, mode] as const),
  ),
);

describe('QR codes (ISO/IEC 18004)', () => {
  it.each(CASES)(
    'version %i at level %s holds %s to the number of %i, and one more takes the next',
    (version, level, _, holds, mode) => {
      const sign = SIGNS[mode] ?? '';
      expect(modules(sign.repeat(holds), level)).toBe(17 + 4 * version);
      expect(modules(sign.repeat(holds + 1), level)).toBe(17 + 4 * (version + 1));
    },
  );
  it('a tag takes the smallest code at every level of mending', () => {
    const { randomInt } = seededChance(11);
    for (let one = 0; one < 50; one += 1) {
      const tag = issueTag(randomInt);
      for (const level of ['L', 'M', 'Q', 'H'] as const) expect(modules(tag, level)).toBe(21);
    }
  });
});
