import { expect, test } from 'vitest';
import { isOurs } from './ourPage.ts';

test('our own page is known by scheme and host', () => {
  expect(isOurs('app://knowngood/#/bench')).toBe(true);
  expect(isOurs('app://knowngood')).toBe(true);
});

test.each([
  'app://knowngood.example/',
  'app://other@elsewhere/',
  'https://knowngood/',
  'file:///app://knowngood/',
  'data:text/html,app://knowngood/',
  'about:blank',
  '',
  'null',
])('%j is not ours', (address) => {
  expect(isOurs(address)).toBe(false);
});
