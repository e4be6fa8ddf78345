import { describe, expect, it } from 'vitest';
import { filesBelow } from './source.ts';
import { refusalNames, refusalsWithoutWords, unevenWords } from './words.ts';

const words = (language: string, value: unknown, name = 'refusals') => ({
  path: `assets/words/${language}/${name}.json`,
  text: JSON.stringify(value),
});
const code = (text: string, path = 'core/job/a.ts') => ({ path, text });
const whole = { says: 'It is out.', unchanged: 'Nothing was moved.', next: 'Take it back.' };

describe('words by language', () => {
  it('hold in the whole project: the same in every language', () => {
    expect(unevenWords(filesBelow('assets'))).toEqual([]);
  });

  it('finds a line or a gap that another language lacks, or has for itself', () => {
    const found = (en: unknown, xx: unknown) => unevenWords([words('en', en), words('xx', xx)]);
    expect(found({ a: 'A', b: 'B' }, { a: 'A' })).toEqual(['assets/words/xx/refusals.json has no "b", "en" has']);
    expect(found({ a: 'A' }, { a: 'A', b: 'B' })).toHaveLength(1);
    expect(found({ a: 'In {bin}' }, { a: 'In {slot}' })).toHaveLength(1);
    expect(found({ a: 'In {bin}, {slot}' }, { a: '{slot}: {bin}' })).toEqual([]);
    expect(found({ a: '{n, plural, one {#} other {# in {bin}}}' }, { a: '{n} in {bin}' })).toEqual([]);
    expect(found({ a: '{n, plural, one {#} other {# in {bin}}}' }, { a: '{n, plural, other {#}}' })).toHaveLength(1);
  });

  it('finds a file that English lacks, and lets another language lack a whole file', () => {
    expect(unevenWords([words('xx', { a: 'A' })])).toHaveLength(1);
    expect(unevenWords([words('en', { a: 'A' }), words('en', { b: 'B' }, 'more'), words('xx', { a: 'A' })])).toEqual(
      [],
    );
  });

  it('finds a text that is no message', () => {
    expect(unevenWords([words('en', { a: 'In {bin' })])).toEqual([
      'assets/words/en/refusals.json: "a" cannot be read as a message',
    ]);
  });

  it('finds a text that says nothing', () => {
    expect(unevenWords([words('en', { a: { b: ' ' } })])).toEqual([
      'assets/words/en/refusals.json: "a.b" says nothing',
    ]);
  });
});

describe('a refusal has words before anyone meets it', () => {
  it('holds in the whole house', () => {
    expect(refusalsWithoutWords(filesBelow())).toEqual([]);
  });

  it('knows a refusal by each way of writing it', () => {
    const text = `
      refuse('a', { tag });
      const x = { refused: 'b', tag };
      type R = { readonly refused: 'c' } | { refused: 'd' | 'e' };
      refuse(late ? 'f' : 'g');
      table({ keyRefused: 'h' });
      refuse(name);`;
    expect([...refusalNames([code(text)]).keys()].sort()).toEqual(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h']);
  });

  it('finds one without words, one that does not say what to do next, and words nobody needs', () => {
    const files = [
      code("refuse('out'); refuse('gone');"),
      words('en', { gone: { ...whole, next: undefined }, idle: whole }),
    ];
    expect(refusalsWithoutWords(files)).toEqual([
      'assets/words/en/refusals.json has no says, unchanged, next for "out" (core/job/a.ts)',
      'assets/words/en/refusals.json has no next for "gone" (core/job/a.ts)',
      'assets/words/en/refusals.json has words for "idle", which no code refuses',
    ]);
    expect(refusalsWithoutWords([code("refuse('out');"), words('en', { out: whole })])).toEqual([]);
  });

  it('does not ask a made-up refusal in a test for words', () => {
    expect(refusalsWithoutWords([code("refuse('out');", 'core/job/a.test.ts')])).toEqual([]);
  });
});
