import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tag } from './part.ts';
import { checkCharacter, formatTag, ISSUED, issueTag, parseTag } from './tag.ts';

const seeded = (numbers: readonly number[]) => {
  let next = 0;
  return (below: number) => (numbers[next++ % numbers.length] ?? 0) % below;
};
/** A number source that goes on for ever: a list that repeats itself may never come to a tag. */
const endless = (seed: number) => {
  let state = seed >>> 0;
  // Numerical Recipes' constants for a modulus of 2^32.
  return (below: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
};
const aTag = fc.integer({ min: 0, max: 2 ** 32 - 1 }).map((seed) => issueTag(endless(seed)));
const aCharacter = fc.constantFrom(...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ');
const anyTag = fc
  .array(aCharacter, { minLength: 6, maxLength: 6 })
  .map((characters) => characters.join(''))
  .map((body) => body + checkCharacter(body));

describe('reading a tag', () => {
  it('takes it as typed, scanned or read aloud: spaces, dashes and case do not matter', () => {
    for (const said of ['K7R 4TM X', 'k7r 4tm x', 'K7R-4TM-X', ' k7r4tmx\r\n', 'K7R–4TM–X', 'K7R\u00a04TM\u00a0X'])
      expect(parseTag(said)).toBe('K7R4TMX');
  });
  it('refuses what is too short, too long or holds a foreign character', () => {
    for (const said of ['', 'K7R 4TM', 'K7R 4TM XX', 'K7R 4TM ẞ', 'K7R_4TM_X', 'K7R.4TM.X', 'Ｋ7R4TMX', 'K7R4TM\u0000'])
      expect(parseTag(said)).toBeUndefined();
  });
  it('refuses every tag with one character mistyped', () => {
    fc.assert(
      fc.property(anyTag, fc.nat({ max: 6 }), aCharacter, (tag, at, wrong) => {
        fc.pre(tag[at] !== wrong);
        expect(parseTag(tag.slice(0, at) + wrong + tag.slice(at + 1))).toBeUndefined();
      }),
      { numRuns: 5_000 },
    );
  });
  it('shows a tag in groups that read back as the same tag', () => {
    fc.assert(
      fc.property(aTag, (tag) => {
        expect(parseTag(formatTag(tag))).toBe(tag);
      }),
    );
    expect(formatTag('K7R4TMX' as Tag)).toBe('K7R 4TM X');
  });
});

describe('issuing a tag', () => {
  it('leaves out every easily mistaken character, the check character included', () => {
    fc.assert(
      fc.property(aTag, (tag) => {
        expect([...tag].every((character) => ISSUED.includes(character))).toBe(true);
        expect(parseTag(tag)).toBe(tag);
      }),
      { numRuns: 2_000 },
    );
  });
  const k7r4tm = [14, 5, 18, 2, 19, 15];
  it('draws again when the check character would be a mistaken one', () => {
    expect(checkCharacter('K7R423')).toBe('Z');
    expect(issueTag(seeded([14, 5, 18, 2, 0, 1, ...k7r4tm]))).toBe('K7R4TMX');
  });
  it('draws again when two swapped neighbours would still read as a tag', () => {
    expect(parseTag('K7R 434 T')).toBeDefined();
    expect(parseTag('K7R 443 T')).toBeDefined();
    expect(issueTag(seeded([14, 5, 18, 2, 1, 2, ...k7r4tm]))).toBe('K7R4TMX');
  });
  it('refuses an issued tag with two neighbours swapped, whichever they are', () => {
    fc.assert(
      fc.property(aTag, fc.nat({ max: 5 }), (tag, at) => {
        fc.pre(tag[at] !== tag[at + 1]);
        const swapped = tag.slice(0, at) + tag.charAt(at + 1) + tag.charAt(at) + tag.slice(at + 2);
        expect(parseTag(swapped)).toBeUndefined();
      }),
      { numRuns: 5_000 },
    );
  });
  it('says so when the number source is broken instead of searching for ever', () => {
    expect(() => issueTag(seeded([14, 5, 18, 2, 0, 1]))).toThrow(/not random/);
  });
  it('refuses to compute a check character over anything but 0–9 A–Z', () => {
    expect(() => checkCharacter('K7R 4T')).toThrow(RangeError);
    expect(() => checkCharacter('k')).toThrow(RangeError);
  });
});
