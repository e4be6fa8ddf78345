import { expect, it } from 'vitest';
import { isJson } from './json.ts';

it.each([null, true, 0, -1.5, 'text', [], {}, [1, [null, { a: 'b' }]], Object.create(null)])('%j is JSON', (value) => {
  expect(isJson(value)).toBe(true);
});

it.each([
  ['nothing', undefined],
  ['a number that is none', Number.NaN],
  ['an endless one', [Number.POSITIVE_INFINITY]],
  ['a large whole number of its own kind', 1n],
  ['a function', { to: () => 1 }],
  ['a field left undefined', { a: undefined }],
  ['a hole in a list', [1, undefined, 2]],
  ['a day', { at: new Date(0) }],
  ['a map', new Map([['a', 1]])],
  ['bytes', new Uint8Array(2)],
])('%s is not', (_, value) => {
  expect(isJson(value)).toBe(false);
});
