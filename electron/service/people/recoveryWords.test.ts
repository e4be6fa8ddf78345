import { expect, it } from 'vitest';
import { freshWords, readWords } from './recoveryWords.ts';

it('what was shown is read again, however it is typed', () => {
  const words = freshWords();
  expect(words).toHaveLength(12);
  expect(readWords(words.join(' '))).toBe(words.join(' '));
  expect(readWords(`  ${words.join(',\n').toUpperCase()} `)).toBe(words.join(' '));
  expect(freshWords()).not.toEqual(words);
});

it('a word that is none, one too few, and two in the wrong order are told apart', () => {
  // The first test vector of the list's own standard: eleven words and the one that checks them.
  const right = 'legal winner thank year wave sausage worth useful legal winner thank yellow';
  expect(readWords(right)).toBe(right);
  expect(readWords(right.replace('sausage', 'soldering'))).toEqual({
    refused: 'recovery-word-unknown',
    word: 'soldering',
  });
  expect(readWords(right.replace('yellow', ''))).toEqual({ refused: 'recovery-words-not-twelve', count: 11 });
  expect(readWords('winner legal thank year wave sausage worth useful legal winner thank yellow')).toEqual({
    refused: 'recovery-words-mistyped',
  });
  expect(readWords('')).toEqual({ refused: 'recovery-words-not-twelve', count: 0 });
});
