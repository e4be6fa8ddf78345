import { describe, expect, it } from 'vitest';
import { isSameNumber } from './sameNumber.ts';

describe('a telephone number', () => {
  it.each([
    ['0117 496 0123', '01174960123', 'with or without spaces'],
    ['+44 117 496 0123', '(0117) 496-0123', 'with its country’s code or a 0 before it'],
    ['0044 117 496 0123', '+44 117 496 0123', 'with 00 or + before the country’s code'],
    ['+47 22 90 12 34', '22 90 12 34', 'of eight digits in all, without its country’s code'],
  ])('%s is %s: %s', (one, other) => {
    expect(isSameNumber(one, other)).toBe(true);
    expect(isSameNumber(other, one)).toBe(true);
  });

  it.each([
    ['0117 496 0123', '0117 496 0124', 'the last digit is another'],
    ['030 1234 5678', '030 2234 5678', 'the eighth digit from the end is another'],
    ['496 0123', '0117 496 0123', 'a part of a number is not the number'],
    ['', '', 'none is not the same as none'],
    ['not on the sheet', 'none', 'words are no number'],
  ])('%s is not %s: %s', (one, other) => {
    expect(isSameNumber(one, other)).toBe(false);
  });
});
