import { describe, expect, it } from 'vitest';
import { fillerOf } from './fillGaps.ts';

const english = fillerOf({ locale: 'en' });

describe('a text with gaps', () => {
  it('takes each fact where its gap stands', () => {
    expect(english('{part} is in {place}.', { part: 'The board', place: 'bin C4' })).toBe('The board is in bin C4.');
    expect(english('Nothing to fill')).toBe('Nothing to fill');
  });

  it.each([
    ['en', 0, 'no warranty'],
    ['en', 1, '1 month'],
    ['en', 24, '24 months'],
  ])('picks the form of its number: %s %d', (locale, n, said) => {
    const text = '{n, plural, =0 {no warranty} one {# month} other {# months}}';
    expect(fillerOf({ locale })(text, { n })).toBe(said);
  });

  // CLDR plural rules, Polish: 1 is one; 2 to 4 few, but for 12 to 14; the rest many.
  it.each([
    [1, '1 minuta'],
    [3, '3 minuty'],
    [13, '13 minut'],
    [22, '22 minuty'],
  ])('picks the form by the rules of its language: %d', (n, said) => {
    const text = '{n, plural, one {# minuta} few {# minuty} many {# minut} other {# minuty}}';
    expect(fillerOf({ locale: 'pl' })(text, { n })).toBe(said);
  });

  it('writes numbers plainly, or as its asker writes them', () => {
    expect(english('{n, plural, one {# start} other {# starts}} of {most}', { n: 1024, most: 2048 })).toBe(
      '1024 starts of 2048',
    );
    const grouped = fillerOf({ locale: 'de', number: new Intl.NumberFormat('de') });
    expect(grouped('{n, plural, one {# Start} other {# Starts}} von {most}', { n: 1024, most: 2048 })).toBe(
      '1.024 Starts von 2.048',
    );
  });

  it('lets no gap be printed: one that was given nothing is a defect', () => {
    expect(() => english('In {bin}', {})).toThrow('not given its {bin}');
    expect(() => english('{n, plural, one {a} other {b}}', {})).toThrow('needs a number');
    expect(() => english('{n, plural, one {a} other {b}}', { n: '1,000' })).toThrow('needs a number');
    expect(fillerOf({ locale: 'en', lacking: () => '?' })('In {bin}', {})).toBe('In ?');
  });

  it('cannot be read when a gap is left open', () => {
    expect(() => english('In {bin', { bin: 'C4' })).toThrow();
  });

  it('takes signs of mark-up, apostrophes and what is filled in as they are', () => {
    expect(english("Under <5 % the owner's part stays: {what}", { what: '{n} <b>' })).toBe(
      "Under <5 % the owner's part stays: {n} <b>",
    );
  });
});
