import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { DICTIONARIES } from '../../db/packing/dictionaries.ts';
import { dictionaryOf } from './dictionaryOf.ts';

describe('the dictionaries that shops’ values and entries were packed with', () => {
  it.each([
    ['values1', 'c6b05ffa86b75f6eefb2b3fc5caac3ccfdb225396b09b4b8f298bbc54d49d924'],
    ['entries1', '962b3bd49b7c1817d4bf247668df1b1bccb8ace4f59b2f41d379149f1cc4349d'],
  ] as const)('%s is as it was, letter by letter: nothing packed with another is read', (name, was) => {
    expect(createHash('sha256').update(DICTIONARIES[name]).digest('hex')).toBe(was);
  });
});

describe('a dictionary', () => {
  const [common, rare] = ['the owner’s machine went home with the part', 'zinc whiskers were met once'];
  it('holds what several texts have in common, once, and nothing that one alone says', () => {
    const made = dictionaryOf([`1 ${common} 1`, `22 ${common} 22`, rare], 1_000);
    expect(made.split(common)).toHaveLength(2);
    expect(made).not.toContain('zinc whis');
  });

  it('is no longer than asked, and keeps what most have in common', () => {
    const texts = [`${common} and then`, `${common} or else`, `${rare}, or else`, `${rare}!`, common];
    const made = dictionaryOf(texts, 20);
    expect(made.length).toBeLessThanOrEqual(20);
    expect(common).toContain(made);
  });
});
