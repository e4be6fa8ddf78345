import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findBadText, refuseBadText } from './refuseBadText.ts';

const LONE = '\ud83d';

test('text with all its surrogate pairs, of any language, passes', () => {
  expect(findBadText({ name: 'Ζωή Müller 🛠', notes: ['«чип»', '한국어'] })).toBeUndefined();
  fc.assert(fc.property(fc.jsonValue({ stringUnit: 'grapheme-composite' }), (value) => !findBadText(value)));
});

test.each([
  ['a bare text', `a\0`, []],
  ['a field', { owner: { name: `Ro\0sa` } }, ['owner', 'name']],
  ['a list', { told: ['dark', LONE] }, ['told', 1]],
  ['a low surrogate first', { say: '\udd27\ud83d' }, ['say']],
  ['a map', { words: new Map([['k', LONE]]) }, ['words', 0, 1]],
  ['a set', { tags: new Set(['ok', LONE]) }, ['tags', 1]],
  ['a file’s name', { photo: new File(['\0'], 'a\0.png') }, ['photo', 'name']],
])('a bad text is named by its field: %s', (_where, input, path) => {
  expect(findBadText(input)?.path).toEqual(path);
});

test('wherever a bad text is put into good input, it is found, and the first one is named', () => {
  const bad = fc.constantFrom('\0', LONE, '\udd27');
  const steps = fc.array(fc.oneof(fc.constant(0), fc.stringMatching(/^[a-z]{1,6}$/)), { maxLength: 12 });
  fc.assert(
    fc.property(steps, bad, fc.string(), (path, what, around) => {
      const input = path.reduceRight<unknown>(
        (inner, step) => (typeof step === 'number' ? [inner, LONE] : { [step]: inner, zz: LONE }),
        around + what,
      );
      expect(findBadText(input)?.path).toEqual(path);
    }),
  );
});

test('a key is text too, and comes back readable', () => {
  expect(findBadText({ facts: { 'a\0b': 1 } })).toEqual({ path: ['facts', 'a␀b'], holds: 'U+0000' });
  expect(findBadText({ [LONE]: 1 })?.path).toEqual(['\ufffd']);
});

test('the bytes of a file are nobody’s text', () => {
  expect(findBadText({ photo: new File(['\0\0'], 'a.png'), rest: new Blob(['\0']) })).toBeUndefined();
});

test('input nested as deep as the asker likes does not bring the service down', () => {
  let deep: unknown = LONE;
  for (let level = 0; level < 50_000; level++) deep = [deep];
  expect(findBadText(deep)?.path.length).toBe(50_000);
});

test('the handler is not reached by bad text, and is by good', () => {
  let reached = 0;
  const call = (input: unknown) => refuseBadText({ input, next: () => ++reached });
  expect(() => call({ owner: { name: '\0' } })).toThrowError(
    expect.objectContaining({
      code: 'BAD_REQUEST',
      data: { issues: [{ path: ['owner', 'name'], message: 'holds U+0000' }] },
    }),
  );
  expect(reached).toBe(0);
  expect(call({ owner: { name: 'Rosa' } })).toBe(1);
});
