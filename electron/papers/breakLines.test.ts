import fc from 'fast-check';
import { expect, test } from 'vitest';
import { breakLines } from './breakLines.ts';
import { STYLES } from './measures.ts';

/** A letter is as wide as its code is long: enough to test breaking without a font. */
const widthOf = (text: string) => Array.from(text).length * 5;
const broken = (text: string, width: number) =>
  breakLines(text, STYLES.text, width, widthOf).map((line) => line.pieces.map((piece) => piece.text).join(''));

test('nothing is lost or added where a line is broken', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('a', 'bb', 'well-known', 'AM-B46', ' ', '  ', 'ß', '9–12'), { maxLength: 60 }),
      fc.integer({ min: 20, max: 200 }),
      (words, width) => {
        const text = words.join('');
        expect(broken(text, width).join('')).toBe(text);
      },
    ),
  );
});

test('no line is wider than its column, whatever stands in it', () => {
  fc.assert(
    fc.property(
      fc.string({ maxLength: 300 }).filter((text) => !/[\r\n\u2028\u2029]/.test(text)),
      fc.integer({ min: 20, max: 200 }),
      (text, width) => {
        for (const line of broken(text, width)) expect(widthOf(line.replace(/ +$/, ''))).toBeLessThanOrEqual(width);
      },
    ),
  );
});

test('a part’s type, a range and a speed stay whole; a made-up word may part at its hyphen', () => {
  expect(broken('board AM-B46', 50)).toEqual(['board ', 'AM-B46']);
  expect(broken('takes 9–12 days', 45)).toEqual(['takes ', '9–12 days']);
  expect(broken('at 10 Gbit/s', 45)).toEqual(['at ', '10 Gbit/s']);
  expect(broken('until 14 January, slot A2 and', 75)).toEqual(['until ', '14 January, ', 'slot A2 and']);
  expect(broken('a power-supply', 45)).toEqual(['a power-', 'supply']);
});

test('a tag is read in one piece', () => {
  const lines = breakLines([{ text: 'machine ' }, { text: 'K7R 4TM X', tag: true }], STYLES.text, 60, widthOf);
  expect(lines.map((line) => line.pieces.map((piece) => piece.text).join(''))).toEqual(['machine ', 'K7R 4TM X']);
});

test('a line break in what someone said stays one', () => {
  expect(broken('dark\nsince Friday', 500)).toEqual(['dark', 'since Friday']);
});
